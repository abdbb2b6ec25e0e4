//! What is hidden stays hidden: before anything is measured, every car looks and sounds alike to a screen
//! reader, whatever is wrong with it.

use assess::attempt::Seed;

use super::bench::{JOB, tree, window_with};
use crate::shown::{Middle, Page};
use crate::ui::clipboard::Leaf;

/// What lets the pump run with the ignition off, from the start: heard from anywhere in the room, so no secret.
const HEARD_FROM_AFAR: [&str; 2] = ["relay_welded", "socket_bridged"];

/// Everything on the screens of the workshop, for hidden numbers `seed` and fault `fault` (index into the
/// car's faults; `None`: as the job has it).
fn seen(seed: u128, fault: Option<u16>) -> Vec<Vec<String>> {
    let mut out = Vec::new();
    for leaf in [Leaf::Card, Leaf::Sheet, Leaf::Notebook, Leaf::Finding] {
        for middle in [Middle::Room, Middle::Diagram] {
            let window = window_with(Page::Workshop, "en", (1280.0, 720.0), |bench| {
                match fault {
                    None => bench.shop.rehearse(JOB, Seed(seed)).unwrap(),
                    Some(fault) => {
                        let mut job = (**bench.shop.job().unwrap()).clone();
                        let severity = job.car.faults[usize::from(fault)].severity_max;
                        job.set_answer(vec![(fault, severity)]);
                        bench.shop.rehearse_as(job, Seed(seed));
                    }
                }
                bench.ui.middle = middle;
                bench.ui.clipboard.show_leaf(leaf, &bench.shop);
            });
            out.push(tree(&window));
        }
    }
    out
}

#[test]
fn inv_before_a_measurement_the_accessible_tree_is_the_same_whatever_is_hidden() {
    let usual = seen(1, None);
    assert!(usual.iter().all(|tree| 20 < tree.len()));
    assert_eq!(seen(2, None), usual, "other tolerances");
    let shop = super::bench::shop(JOB);
    let car = shop.car().unwrap();
    for (i, fault) in car.faults.iter().enumerate() {
        let heard = HEARD_FROM_AFAR.contains(&fault.id.as_str());
        assert_eq!(seen(1, Some(i as u16)) != usual, heard, "{}", fault.id);
    }
}
