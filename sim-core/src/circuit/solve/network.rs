//! Electrical side: a nodal network solved at every stage of a step.
//!
//! Every two-pole is a conductance with a source behind it, G v = i; a conductance of 1 nS from every node to the
//! body keeps loose ends defined. Positive current flows into a pole's port `a`. Most two-poles keep their
//! conductance until something is switched. They are solved once, leaves first by a plan made once: what each
//! source does to every node, and what a current through each two-pole that does vary (motor, filament,
//! track) does. From then on a solve adds those up and meets the few that vary, as Thévenin's equivalent
//! does ([`Solved`]). Not modelled: inductance, capacitance, contact bounce.

use super::linear::{Plan, Unknowns};
use crate::lanes::{Mask as _, Real};

/// Conductance that ties loose ends to the body, S.
pub(crate) const G_LOOSE: f64 = 1e-9;

/// A two-pole between two nodes; node 0 is the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Branch {
    pub(crate) node_a: u16,
    pub(crate) node_b: u16,
    /// Whether the conductance follows the state continuously.
    pub(crate) varies: bool,
    /// Whether there can be a voltage behind a steady conductance.
    pub(crate) is_source: bool,
}

/// Conductance and source of a two-pole: i = g (v_a − v_b − emf).
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PoleState<R = f64> {
    pub(crate) g: R,
    pub(crate) emf: R,
}

impl<R: Real> PoleState<R> {
    /// To the last bit, the sign of nought included: what is solved for one is then what the other's is.
    #[inline(always)]
    pub(crate) fn is(self, other: Self) -> bool {
        self.g.is(other.g) && self.emf.is(other.emf)
    }
}

/// Nodes, and the two-poles that link them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Network {
    /// Two-poles in part order.
    branches: Vec<Branch>,
    /// Number of nodes.
    pub(crate) n: usize,
    /// Elimination of the nodes, node k in row k; the body's row stands alone.
    plan: Plan,
    /// Per pole, the two entries of the matrix that link its nodes, unless one is the body.
    links: Vec<Option<(u32, u32)>>,
    /// Numbers of the two-poles whose conductance varies.
    varying: Vec<usize>,
    /// Numbers of the two-poles of steady conductance with a voltage behind it.
    sources: Vec<usize>,
}

/// Solution of one solve, and what the next one can use again.
#[derive(Clone, Debug, Default)]
pub(crate) struct Solved<R: Real = f64> {
    /// Node voltages against the body, V; `v[0]` = 0.
    pub(crate) v: Unknowns<R>,
    /// Per source, what 1 V of it does to every node, V; n each. Nothing where it does not conduct.
    unit_emf: Vec<R>,
    /// Per varying two-pole, what 1 A from its port b to its port a outside it does to every node, V.
    unit_current: Vec<R>,
    /// Between the varying two-poles, what 1 A through one does across another, Ω.
    mutual: Vec<R>,
    /// Work space: the varying two-poles' matrix and their currents; the steady ones' matrix and one column.
    small: Vec<R>,
    current: Vec<R>,
    steady: Vec<f64>,
    column: Unknowns<f64>,
}

impl Network {
    /// Of `n` nodes in the order in which they are eliminated; `None` when they are too many.
    pub(crate) fn of(n: usize, branches: Vec<Branch>) -> Option<Self> {
        let linked = |p: &&Branch| 0 < p.node_a && 0 < p.node_b && p.node_a != p.node_b;
        let places: Vec<(usize, usize)> = branches
            .iter()
            .filter(linked)
            .map(|p| (usize::from(p.node_a), usize::from(p.node_b)))
            .flat_map(|(a, b)| [(a, b), (b, a)])
            .collect();
        let (plan, entries) = Plan::of(n, &places)?;
        let those = |is: fn(&Branch) -> bool| (0..branches.len()).filter(|i| is(&branches[*i])).collect();
        let link = |p: &Branch| {
            let (a, b) = (usize::from(p.node_a), usize::from(p.node_b));
            Some((entries.entry(a, b)?, entries.entry(b, a)?)).filter(|_| a != b)
        };
        Some(Self {
            varying: those(|p| p.varies),
            sources: those(|p| p.is_source),
            links: branches.iter().map(link).collect(),
            branches,
            n,
            plan,
        })
    }

    /// Voltage from port a to port b of two-pole number `pole`.
    #[inline(always)]
    pub(crate) fn across<R: Real>(&self, pole: usize, solved: &Solved<R>) -> R {
        across(&self.branches[pole], &solved.v[..])
    }

    /// The same in one lane alone.
    pub(crate) fn across_in<R: Real>(&self, pole: usize, solved: &Solved<R>, lane: usize) -> f64 {
        let Branch { node_a, node_b, .. } = self.branches[pole];
        solved.v[usize::from(node_a)].lane(lane) - solved.v[usize::from(node_b)].lane(lane)
    }

    /// Solves the network for the given pole values; what is steady of them has been worked out.
    #[inline(always)]
    pub(crate) fn solve<R: Real>(&self, poles: &[PoleState<R>], out: &mut Solved<R>) {
        let n = self.n;
        let zero = R::all(0.0);
        out.v[..n].fill(zero);
        for (row, i) in out.unit_emf.chunks_exact(n).zip(&self.sources) {
            let s = poles[*i];
            let drives = zero.below(s.g) & !(s.emf.at_most(zero) & zero.at_most(s.emf));
            if drives.any() {
                for (v, unit) in out.v.iter_mut().zip(row) {
                    *v += s.emf * *unit;
                }
            }
        }
        let Solved { v, unit_current, mutual, small, current, .. } = out;
        current.clear();
        for i in &self.varying {
            current.push(across(&self.branches[*i], &v[..]) - poles[*i].emf);
        }
        self.meet(poles, mutual, small, current);
        for (row, i) in unit_current.chunks_exact(n).zip(&current[..]) {
            for (v, unit) in v.iter_mut().zip(row) {
                *v -= *i * *unit;
            }
        }
    }

    /// What the steady two-poles make of every source and of a current through every varying two-pole, into one
    /// lane.
    pub(crate) fn work_out<R: Real>(&self, poles: &[PoleState<R>], lane: usize, out: &mut Solved<R>) {
        let n = self.n;
        let (varying, zero) = (&self.varying, R::all(0.0));
        out.unit_emf.resize(self.sources.len() * n, zero);
        out.unit_current.resize(varying.len() * n, zero);
        out.mutual.resize(varying.len() * varying.len(), zero);
        let g_of = |i: usize| poles[i].g.lane(lane);
        let (g, column) = (&mut out.steady, &mut out.column);
        g.clear();
        g.resize(self.plan.n_entries(), 0.0);
        let (links, own) = g.split_at_mut(self.plan.diagonal(0));
        own.fill(G_LOOSE);
        for (i, (pole, link)) in self.branches.iter().zip(&self.links).enumerate() {
            let (a, b) = (usize::from(pole.node_a), usize::from(pole.node_b));
            if pole.varies || g_of(i) <= 0.0 || a == b {
                continue;
            }
            own[a] += g_of(i);
            own[b] += g_of(i);
            if let Some((ab, ba)) = link {
                links[*ab as usize] -= g_of(i);
                links[*ba as usize] -= g_of(i);
            }
        }
        // The body is the reference: its row says v = 0.
        own[0] = 1.0;
        // Diagonally dominant and symmetric: every pivot is positive.
        let positive = self.plan.factor(g);
        assert!(positive, "a network of conductances has positive pivots");
        let mut driven = |pole: &Branch, ampere: f64, row: &mut [R]| {
            column[..n].fill(0.0);
            column[usize::from(pole.node_a)] += ampere;
            column[usize::from(pole.node_b)] -= ampere;
            column[0] = 0.0;
            self.plan.solve(g, column);
            for (all, v) in row.iter_mut().zip(&column[..n]) {
                all.put(lane, *v);
            }
        };
        for (row, i) in out.unit_emf.chunks_exact_mut(n).zip(&self.sources) {
            if 0.0 < g_of(*i) {
                driven(&self.branches[*i], g_of(*i), row);
            } else {
                row.iter_mut().for_each(|v| v.put(lane, 0.0));
            }
        }
        for (row, i) in out.unit_current.chunks_exact_mut(n).zip(varying) {
            driven(&self.branches[*i], 1.0, row);
        }
        for (k, i) in varying.iter().enumerate() {
            for (j, row) in out.unit_current.chunks_exact(n).enumerate() {
                out.mutual[k * varying.len() + j].put(lane, across(&self.branches[*i], row).lane(lane));
            }
        }
    }

    /// Currents of the varying two-poles from the voltages across them without any, less their sources:
    /// (1/g + mutual) i = v, symmetric and positive; one that does not conduct has none.
    #[inline(always)]
    fn meet<R: Real>(&self, poles: &[PoleState<R>], mutual: &[R], small: &mut Vec<R>, x: &mut [R]) {
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let m = self.varying.len();
        small.clear();
        small.extend_from_slice(mutual);
        for (k, i) in self.varying.iter().enumerate() {
            let g = poles[*i].g;
            let conducts = zero.below(g);
            small[k * m + k] += one / g;
            if !conducts.every() {
                for j in 0..m {
                    small[k * m + j] = R::choose(conducts, small[k * m + j], zero);
                    small[j * m + k] = R::choose(conducts, small[j * m + k], zero);
                }
                small[k * m + k] = R::choose(conducts, small[k * m + k], one);
                x[k] = R::choose(conducts, x[k], zero);
            }
        }
        for k in 0..m {
            for i in k + 1..m {
                let l = small[i * m + k] / small[k * m + k];
                for j in k + 1..m {
                    let less = l * small[k * m + j];
                    small[i * m + j] -= less;
                }
                let less = l * x[k];
                x[i] -= less;
            }
        }
        for k in (0..m).rev() {
            let mut rest = zero;
            for j in k + 1..m {
                rest += small[k * m + j] * x[j];
            }
            x[k] = (x[k] - rest) / small[k * m + k];
        }
    }

    /// Resistance of the solved network, everything in it, seen from the nodes of a varying two-pole, ohm.
    #[inline(always)]
    pub(crate) fn seen_from<R: Real>(
        &self,
        poles: &[PoleState<R>],
        solved: &mut Solved<R>,
        pole: usize,
    ) -> R {
        let zero = R::all(0.0);
        let m = self.varying.len();
        let Some(k) = self.varying.iter().position(|i| *i == pole) else { return zero };
        let Solved { mutual, small, current, .. } = solved;
        let own = &mutual[k * m..(k + 1) * m];
        current.clear();
        current.extend_from_slice(own);
        self.meet(poles, mutual, small, current);
        let mut met = zero;
        for (z, i) in own.iter().zip(&*current) {
            met += *z * *i;
        }
        own[k] - met
    }
}

/// Voltage from port a to port b of a two-pole.
#[inline(always)]
fn across<R: Real>(pole: &Branch, v: &[R]) -> R {
    v[usize::from(pole.node_a)] - v[usize::from(pole.node_b)]
}
