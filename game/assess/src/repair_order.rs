//! In which order to try repairs when nothing more can be measured: P over C.
//!
//! One fault, independent costs: trying in order of falling probability per cost is cheapest on
//! average (Kadane and Simon 1975; proof by exchanging neighbours, which changes the cost by
//! p_i c_j − p_j c_i). The cost of what no try cures is the same in every order only if it is paid last,
//! as here. Not modelled: covers shared by several tries.

/// Indices in order of falling probability per cost; equal ones keep their order.
#[must_use]
pub fn by_p_over_c(p: &[f64], cost: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..p.len().min(cost.len())).collect();
    order.sort_by(|&i, &j| (p[j] * cost[i]).total_cmp(&(p[i] * cost[j])));
    order
}

/// Expected cost of trying in the given order until the car is well, `service` being paid when nothing
/// on the list cures it. Each try costs its whole `cost`, needed or not.
#[must_use]
pub fn expected_cost(order: &[usize], p: &[f64], cost: &[f64], service: f64) -> f64 {
    let mut still_faulty = 1.0;
    let mut total = 0.0;
    for &i in order {
        total += still_faulty * cost[i];
        still_faulty -= p[i];
    }
    total + still_faulty.max(0.0) * service
}
