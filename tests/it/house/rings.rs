//! No ring of files: what uses something of a file is not used by it. A module and the files below it may.

use std::collections::BTreeMap;

use petgraph::algo::tarjan_scc;
use petgraph::graph::{DiGraph, NodeIndex};

use super::source::{self, CRATES, Module, Source};

/// The file that a path leads to: that of the longest module in it.
fn target<'m>(files: &'m BTreeMap<Module, Source>, path: &[String]) -> Option<&'m Module> {
    let names = path.strip_prefix(&["crate".to_owned()])?;
    (0..=names.len()).rev().find_map(|n| files.get_key_value(&names[..n])).map(|(module, _)| module)
}

fn is_parent(above: &Module, below: &Module) -> bool {
    below.split_last().is_some_and(|(_, rest)| rest == above.as_slice())
}

/// The rings of a crate, each by its files.
fn rings(files: &BTreeMap<Module, Source>) -> Vec<Vec<String>> {
    let mut graph = DiGraph::<&Module, ()>::new();
    let nodes: BTreeMap<&Module, NodeIndex> = files.keys().map(|m| (m, graph.add_node(m))).collect();
    for (module, source) in files {
        for to in source.paths.iter().filter_map(|path| target(files, path)) {
            if to != module && !is_parent(to, module) && !is_parent(module, to) {
                graph.update_edge(nodes[module], nodes[to], ());
            }
        }
    }
    let name = |node: NodeIndex| files[graph[node]].file.display().to_string();
    let rings = tarjan_scc(&graph).into_iter().filter(|ring| 1 < ring.len());
    rings.map(|ring| ring.into_iter().map(name).collect()).collect()
}

#[test]
fn inv_no_files_of_a_crate_use_each_other_in_a_ring() {
    let mut found = Vec::new();
    let (mut n_files, mut n_paths) = (0, 0);
    for (_, folder) in CRATES {
        let files = source::of_crate(folder);
        n_files += files.len();
        n_paths += files
            .values()
            .map(|f| f.paths.iter().filter(|p| target(&files, p).is_some()).count())
            .sum::<usize>();
        found.extend(rings(&files));
    }
    // What reads nothing finds nothing.
    assert!(250 < n_files && 1_000 < n_paths, "{n_files} files, {n_paths} paths in their own crates");
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn a_ring_is_found_and_parent_and_child_are_none() {
    let file = |module: &[&str], uses: &[&[&str]]| {
        let path = |p: &&[&str]| p.iter().map(|s| (*s).to_owned()).collect();
        let module: Module = module.iter().map(|s| (*s).to_owned()).collect();
        (
            module.clone(),
            Source {
                file: module.join("/").into(),
                paths: uses.iter().map(path).collect(),
                ..Source::default()
            },
        )
    };
    let child = [file(&[], &[&["crate", "a", "X"]]), file(&["a"], &[&["crate", "Y"]])];
    assert!(rings(&BTreeMap::from(child)).is_empty());
    let ring = [
        file(&["a"], &[&["crate", "b", "c", "X"]]),
        file(&["b"], &[]),
        file(&["b", "c"], &[&["crate", "d"]]),
        file(&["d"], &[&["crate", "a", "f"]]),
    ];
    assert_eq!(rings(&BTreeMap::from(ring)).iter().map(Vec::len).collect::<Vec<_>>(), [3]);
}
