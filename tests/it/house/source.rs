//! The sources of a crate as files that name each other. Tests of the crates, and what is built for them alone, are
//! left out.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use syn::visit::{self, Visit};

/// Name in code and folder of every crate of the program, from the bottom up.
pub(super) const CRATES: [(&str, &str); 5] = [
    ("sim_core", "sim-core/src"),
    ("assess", "game/assess/src"),
    ("front", "game/front/src"),
    ("window", "game/window/src"),
    ("game", "game/src"),
];

/// The names of modules from the crate's root.
pub(super) type Module = Vec<String>;

/// A file and what it names.
#[derive(Debug, Default)]
pub(super) struct Source {
    /// From the root of the project.
    pub(super) file: PathBuf,
    /// Paths as written, those of the own crate from its root (`crate`, `window`, …).
    pub(super) paths: BTreeSet<Vec<String>>,
    /// Names of methods that are called.
    pub(super) methods: BTreeSet<String>,
    /// Texts in quotation marks.
    pub(super) texts: BTreeSet<String>,
}

/// The files of a crate by their modules.
pub(super) fn of_crate(folder: &str) -> BTreeMap<Module, Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut found = BTreeMap::new();
    let begin = ["lib.rs", "main.rs"].map(|f| root.join(folder).join(f)).into_iter().find(|f| f.exists());
    read(&begin.unwrap(), &root.join(folder), Vec::new(), &mut found);
    for source in found.values_mut() {
        source.file = source.file.strip_prefix(&root).unwrap().to_owned();
    }
    found
}

/// Reads a file and the files of its modules, which are in `folder`.
fn read(file: &Path, folder: &Path, module: Module, found: &mut BTreeMap<Module, Source>) {
    let text = std::fs::read_to_string(file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
    let parsed = syn::parse_file(&text).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
    let mut reader = Reader { inside: module.clone(), ..Reader::default() };
    reader.visit_file(&parsed);
    found.insert(module.clone(), Source { file: file.to_owned(), ..reader.source });
    for name in reader.modules {
        let (flat, nested) = (folder.join(format!("{name}.rs")), folder.join(&name).join("mod.rs"));
        let file = if flat.exists() { flat } else { nested };
        read(&file, &folder.join(&name), [module.clone(), vec![name]].concat(), found);
    }
}

#[derive(Default)]
struct Reader {
    /// Module that is being read, inline ones too.
    inside: Module,
    /// Modules with files of their own.
    modules: Vec<String>,
    source: Source,
}

pub(super) fn is_for_tests(attributes: &[syn::Attribute]) -> bool {
    let test = |a: &syn::Attribute| match &a.meta {
        syn::Meta::List(list) if list.path.is_ident("cfg") => {
            list.parse_args::<syn::Path>().is_ok_and(|path| path.is_ident("test"))
        }
        _ => false,
    };
    attributes.iter().any(test)
}

impl Reader {
    /// A path whose own crate's part begins at the root.
    fn put(&mut self, path: Vec<String>) {
        let mut from = match path.first().map(String::as_str) {
            Some("crate") => Vec::new(),
            Some("self" | "super") => self.inside.clone(),
            _ => {
                self.source.paths.insert(path);
                return;
            }
        };
        let mut rest = path.into_iter().peekable();
        while let Some(name) = rest.next_if(|name| matches!(name.as_str(), "crate" | "self" | "super")) {
            if name == "super" {
                from.pop();
            }
        }
        self.source.paths.insert([vec!["crate".to_owned()], from, rest.collect()].concat());
    }

    fn tree(&mut self, before: &[String], tree: &syn::UseTree) {
        let with = |name: String| [before, &[name]].concat();
        match tree {
            syn::UseTree::Path(path) => self.tree(&with(path.ident.to_string()), &path.tree),
            syn::UseTree::Name(name) => self.put(with(name.ident.to_string())),
            syn::UseTree::Rename(name) => self.put(with(name.ident.to_string())),
            syn::UseTree::Glob(_) => self.put(before.to_vec()),
            syn::UseTree::Group(group) => group.items.iter().for_each(|tree| self.tree(before, tree)),
        }
    }
}

/// The attributes of an item, as far as it may be there for tests alone.
pub(super) fn attributes(item: &syn::Item) -> &[syn::Attribute] {
    match item {
        syn::Item::Const(item) => &item.attrs,
        syn::Item::Fn(item) => &item.attrs,
        syn::Item::Impl(item) => &item.attrs,
        syn::Item::Mod(item) => &item.attrs,
        syn::Item::Static(item) => &item.attrs,
        syn::Item::Struct(item) => &item.attrs,
        syn::Item::Use(item) => &item.attrs,
        _ => &[],
    }
}

/// The Rust files under a folder, sorted; files and folders of tests left out.
pub(super) fn files_of(folder: &Path) -> Vec<PathBuf> {
    let mut entries: Vec<_> = std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    entries.sort();
    let mut out = Vec::new();
    for path in entries {
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if path.is_dir() && name != "tests" {
            out.extend(files_of(&path));
        } else if name.ends_with(".rs") && name != "tests.rs" && !name.ends_with("_tests.rs") {
            out.push(path);
        }
    }
    out
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        if !is_for_tests(attributes(item)) {
            visit::visit_item(self, item);
        }
    }

    fn visit_impl_item_fn(&mut self, item: &'ast syn::ImplItemFn) {
        if !is_for_tests(&item.attrs) {
            visit::visit_impl_item_fn(self, item);
        }
    }

    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        let name = item.ident.to_string();
        if item.content.is_none() {
            self.modules.push(name);
            return;
        }
        self.inside.push(name);
        visit::visit_item_mod(self, item);
        self.inside.pop();
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        self.tree(&[], &item.tree);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.put(path.segments.iter().map(|s| s.ident.to_string()).collect());
        visit::visit_path(self, path);
    }

    fn visit_lit_str(&mut self, text: &'ast syn::LitStr) {
        self.source.texts.insert(text.value());
    }

    fn visit_macro(&mut self, of: &'ast syn::Macro) {
        // What a macro is given need not be an expression; texts in it are texts all the same.
        let tokens = of.tokens.to_string();
        self.source.texts.extend(tokens.split('"').skip(1).step_by(2).map(str::to_owned));
        visit::visit_macro(self, of);
    }

    fn visit_expr_method_call(&mut self, call: &'ast syn::ExprMethodCall) {
        self.source.methods.insert(call.method.to_string());
        visit::visit_expr_method_call(self, call);
    }
}
