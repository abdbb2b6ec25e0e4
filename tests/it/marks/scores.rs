//! Scores against worked examples (rows T7, T8 and section 1.5 of the project's assessment notes).

use assess::marks::score::{
    Bet, Breaches, PartUsed, Parts, Time, Weights, brier, competent, correctness, economy, evidence,
    log_score, overrun, parts, release, total, verdict,
};

/// The sums are exact in decimals; binary rounding stays far below this.
const ROUNDING: f64 = 1e-12;

fn exactly(what: &str, got: f64, want: f64) {
    assert!((got - want).abs() <= ROUNDING, "{what}: {got} against {want}");
}

/// T7: certainty-based marks (Gardner-Medwin): 1/0, 2/−2, 3/−6 cross at 2/3 and 4/5.
#[test]
fn val_certainty_based_marks() {
    let low = Bet { right: 1.0, wrong: 0.0 };
    let middle = Bet { right: 2.0, wrong: -2.0 };
    let high = Bet { right: 3.0, wrong: -6.0 };
    for p in [0.0, 0.3, 0.5, 2.0 / 3.0, 0.8, 1.0] {
        exactly("low", low.expected(p), p);
        exactly("middle", middle.expected(p), 4.0 * p - 2.0);
        exactly("high", high.expected(p), 9.0 * p - 6.0);
    }
    exactly("2/3", low.break_even(middle).unwrap(), 2.0 / 3.0);
    exactly("4/5", middle.break_even(high).unwrap(), 4.0 / 5.0);
    assert_eq!(low.break_even(low), None);
}

/// T8: Brier 1950 and the log rule; printed −0.22 and −1.6.
#[test]
fn val_brier_and_log_rules() {
    exactly("right", brier(0.8, 1.0), 0.04);
    exactly("wrong", brier(0.8, 0.0), 0.64);
    assert!((log_score(0.8) + 0.22).abs() <= 0.005);
    assert!((log_score(0.2) + 1.6).abs() <= 0.05);
}

/// Section 1.5: the table of the verdict, and that honesty pays best.
#[test]
fn val_verdict_table_and_propriety() {
    for (r, right, wrong) in [
        (0.40, 0.64, -0.16),
        (0.60, 0.84, -0.36),
        (0.80, 0.96, -0.64),
        (0.95, 0.9975, -0.9025),
        (0.0, 0.0, 0.0),
    ] {
        exactly("right", verdict(r, 1.0), right);
        exactly("wrong", verdict(r, 0.0), wrong);
    }
    for step in 0..=20 {
        let p = f64::from(step) / 20.0;
        exactly("honest", Bet::of_certainty(p).expected(p), p * p);
        for other in 0..=20 {
            let r = f64::from(other) / 20.0;
            assert!(Bet::of_certainty(r).expected(p) <= p * p + ROUNDING, "{r} beats {p}");
        }
    }
}

fn sum(parts: Parts) -> f64 {
    total(parts, Weights::FULL, Breaches::default(), 70.0)
}

/// Section 1.5, checks on case 1.3: careful, lucky, wrong.
#[test]
fn val_three_trainees() {
    // Careful: hose at 0.9230 from 0.30, reachable 0.9204 (capped at 0.90), 19 min against 11.
    let e = evidence(0.30, 0.9230, 0.9204);
    exactly("E", e, 1.0);
    let f = economy(11.0, 19.0, 1.0, e);
    assert!((f - 0.7237).abs() <= 0.5e-4, "{f}");
    let careful = Parts { v: verdict(0.8, 1.0), e, f, r: 1.0, q: 1.0, d: 1.0 };
    assert!((sum(careful) - 96.04).abs() <= 0.005, "{}", sum(careful));
    assert!(competent(careful, true, Breaches::default(), sum(careful), 70.0));
    // Lucky: no test at all, right part, verified, recorded.
    let e = evidence(0.30, 0.30, 0.9204);
    let f = economy(11.0, 5.0, 1.0, e);
    let lucky = Parts { v: verdict(0.95, 1.0), e, f, r: 1.0, q: 1.0, d: 1.0 };
    assert!((sum(lucky) - 64.93).abs() <= 0.006, "{}", sum(lucky));
    assert!(!competent(lucky, true, Breaches::default(), 100.0, 70.0), "E alone must stop a guess");
    // Wrong class.
    let wrong = Parts { v: verdict(0.8, 0.0), e: 0.0, f: 0.0, r: 0.5, q: 0.0, d: 1.0 };
    exactly("wrong", sum(wrong), 0.0);
    let w = Weights::FULL.points();
    exactly("before the clip", w.v * wrong.v + w.r * wrong.r + w.d * wrong.d, -4.20);
}

#[test]
fn inv_evidence_is_a_share_of_bits() {
    exactly("none", evidence(0.1, 0.1, 0.9), 0.0);
    exactly("worse than the prior", evidence(0.1, 0.01, 0.9), 0.0);
    exactly("all", evidence(0.1, 0.9, 0.99), 1.0);
    exactly("half the bits", evidence(0.1, 0.3, 0.9), 0.5); // 3 = √9
    exactly("what cannot be reached is not asked", evidence(0.1, 0.4, 0.4), 1.0);
    exactly("prior beyond the goal", evidence(0.95, 0.92, 0.99), 1.0);
    exactly("prior beyond the goal, talked away", evidence(0.95, 0.5, 0.99), 0.0);
}

#[test]
fn inv_parts_release_sets_and_the_gate() {
    let sound = |price, p_faulty| PartUsed { price, was_sound: true, p_faulty };
    let faulty = PartUsed { price: 500.0, was_sound: false, p_faulty: 0.1 };
    exactly("needed", parts(&[faulty], 400.0), 1.0);
    exactly("wasted", parts(&[sound(100.0, 0.0)], 400.0), 0.75);
    exactly("excused", parts(&[sound(100.0, 0.6)], 400.0), 0.9);
    exactly("dear", parts(&[sound(300.0, 0.0)], 400.0), 0.25);
    // A cheap one costs no less than a quarter of the dearest: one is a slip, three are none.
    exactly("a slip", parts(&[sound(4.0, 0.0)], 400.0), 0.75);
    exactly("thrown in", parts(&[sound(4.0, 0.0), sound(20.0, 0.0), sound(30.0, 0.0)], 400.0), 0.25);
    exactly("seven", parts(&[sound(20.0, 0.0); 7], 400.0), 0.0);
    exactly("grounds", parts(&[sound(20.0, 0.9), sound(20.0, 0.5)], 400.0), 0.85);
    exactly("ruin", parts(&[sound(300.0, 0.0), sound(300.0, 0.1)], 400.0), 0.0);
    exactly("checks", release(1.0, 0.0, false), 2.0 / 3.0);
    exactly("back faulty", release(1.0, 1.0, true), 0.0);
    exactly("both healthy", correctness::<u16>(&[], &[]), 1.0);
    exactly("one of two", correctness(&[1, 2], &[2]), 2.0 / 3.0);
    exactly("none", correctness(&[1], &[]), 0.0);
    let full = Parts { v: 0.9975, e: 1.0, f: 0.0, r: 1.0, q: 1.0, d: 1.0 };
    let gate = |b: Breaches| total(full, Weights::NO_ECONOMY, b, 70.0);
    let none = gate(Breaches::default());
    exactly("scaled to 100", none, 100.0 - 100.0 / 3.0 * 0.0025);
    exactly("major and minor", gate(Breaches { critical: 0, major: 1, minor: 1 }), none - 20.0);
    let critical = Breaches { critical: 1, ..Breaches::default() };
    assert!(gate(critical) < 70.0);
    assert!(!competent(full, true, critical, 100.0, 70.0));
    assert!(!competent(full, false, Breaches::default(), 100.0, 70.0));
}

#[test]
fn inv_time_costs_only_beyond_what_the_job_gives() {
    let of = |attended_min, unattended_min| {
        overrun(Time { attended_min, limit_min: 90.0, unattended_min, waiting_min: 960.0 })
    };
    exactly("in time", of(90.0, 960.0), 0.0);
    exactly("a minute late", of(91.0, 0.0), 2.0);
    exactly("a tenth", of(99.0, 0.0), 2.0);
    exactly("twice the limit", of(180.0, 0.0), 20.0);
    exactly("a second night", of(60.0, 960.0 + 720.0), 6.0);
    exactly("ten nights", of(60.0, 7200.0), 52.0);
    exactly("both", of(91.0, 961.0), 4.0);
}
