//! A page that a key opens.

/// A page over everything else, as high as it needs.
pub(in super::super) fn page(id: &str, ctx: &egui::Context) -> egui::Modal {
    let id = egui::Id::new(id);
    let height = ctx.content_rect().height() - 60.0;
    egui::Modal::new(id).area(egui::Modal::default_area(id).default_height(height))
}
