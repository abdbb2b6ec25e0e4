//! Colours, sizes and the style of every panel: paper, ink, one accent for what the trainee carries.
//!
//! The only place that names a colour. Contrast is computed in a test: text ≥ 4.5:1, graphics ≥ 3:1
//! (WCAG 2.2 AA). Orange is for high-voltage cable and nothing else.

use egui::{Color32, CornerRadius, Stroke, Visuals};

/// Sheet of the clipboard.
pub const PAPER: Color32 = Color32::from_rgb(0xF6, 0xF3, 0xEA);
/// A field to write in.
pub const FIELD: Color32 = Color32::from_rgb(0xFF, 0xFF, 0xFC);
/// Printed and written text.
pub const INK: Color32 = Color32::from_rgb(0x1F, 0x24, 0x28);
/// Text of less weight.
pub const INK_FAINT: Color32 = Color32::from_rgb(0x54, 0x5A, 0x5E);
/// What the trainee has written by hand.
pub const PEN: Color32 = Color32::from_rgb(0x1D, 0x3D, 0x7A);
/// The clipboard's hardboard.
pub const BOARD: Color32 = Color32::from_rgb(0x53, 0x45, 0x38);
/// The clipboard's clip.
pub const STEEL: Color32 = Color32::from_rgb(0xB9, 0xBA, 0xB4);
/// Lines between things.
pub const RULE: Color32 = Color32::from_rgb(0x8A, 0x8C, 0x86);
/// Ground of tray and bars: the bench's grey-green.
pub const BENCH: Color32 = Color32::from_rgb(0x2C, 0x36, 0x38);
/// Text on the bench.
pub const ON_BENCH: Color32 = Color32::from_rgb(0xF1, 0xF1, 0xEC);
/// Text of less weight on the bench.
pub const ON_BENCH_FAINT: Color32 = Color32::from_rgb(0xC3, 0xC9, 0xC6);
/// What the trainee carries and picks: gauge hose, outlines, focus; on light ground.
pub const ACCENT: Color32 = Color32::from_rgb(0x00, 0x6E, 0x6A);
/// The same on dark ground.
pub const ACCENT_ON_DARK: Color32 = Color32::from_rgb(0x3F, 0xC9, 0xBE);
/// A refusal, on light ground.
pub const REFUSED: Color32 = Color32::from_rgb(0x7A, 0x4A, 0x00);
/// A breach of safety, on light ground.
pub const BREACH: Color32 = Color32::from_rgb(0xA1, 0x1D, 0x1D);
/// Ground of a caution.
pub const CAUTION: Color32 = Color32::from_rgb(0xFB, 0xE9, 0xA9);

/// Ground of a cell, filled as high as what it stands for is probable.
pub const SHARE: Color32 = Color32::from_rgb(0xBF, 0xDE, 0xDA);

/// Data colours that people with any colour vision tell apart (Okabe and Ito); always with a word or a
/// shape beside them. Their orange is left out: orange means high voltage here.
pub const SERIES: [Color32; 6] = [
    Color32::from_rgb(0x00, 0x72, 0xB2),
    Color32::from_rgb(0xD5, 0x5E, 0x00),
    Color32::from_rgb(0x00, 0x9E, 0x73),
    Color32::from_rgb(0xCC, 0x79, 0xA7),
    Color32::from_rgb(0x56, 0xB4, 0xE9),
    Color32::from_rgb(0x00, 0x00, 0x00),
];

/// Case of an instrument: zinc.
pub const CASE: Color32 = Color32::from_rgb(0xB9, 0xBC, 0xB6);
/// Edges of cases, knobs, pins.
pub const CASE_EDGE: Color32 = Color32::from_rgb(0x6B, 0x70, 0x6E);
/// Face of a dial.
pub const FACE: Color32 = Color32::from_rgb(0xFA, 0xF9, 0xF4);
/// Marks and numbers on it.
pub const FACE_INK: Color32 = Color32::from_rgb(0x1B, 0x1D, 0x1F);
/// A needle: as black as it gets, so that it is told from the marks by its shape alone.
pub const NEEDLE: Color32 = Color32::from_rgb(0x08, 0x0A, 0x0C);
/// Shadow under something.
pub const SHADOW: Color32 = Color32::from_rgba_premultiplied(0, 0, 0, 70);
/// Sheen of a glass.
pub const SHEEN: Color32 = Color32::from_rgba_premultiplied(9, 9, 9, 9);
/// A card of the tray.
pub const CARD: Color32 = Color32::from_rgb(0x38, 0x44, 0x46);
/// Liquid crystal, on.
pub const LCD: Color32 = Color32::from_rgb(0xC9, 0xD3, 0xC0);
/// Liquid crystal, off.
pub const LCD_DARK: Color32 = Color32::from_rgb(0x8C, 0x96, 0x8A);
/// Its digits.
pub const LCD_INK: Color32 = Color32::from_rgb(0x14, 0x1B, 0x17);
/// Segments that are not lit.
pub const LCD_GHOST: Color32 = Color32::from_rgba_premultiplied(8, 10, 8, 16);
/// Body of a meter.
pub const METER_BODY: Color32 = Color32::from_rgb(0x23, 0x2A, 0x2E);
/// Knob on it, rubber.
pub const METER_KNOB: Color32 = Color32::from_rgb(0x12, 0x16, 0x18);
/// Electrical lead, plus side.
pub const LEAD_RED: Color32 = Color32::from_rgb(0xC2, 0x2B, 0x2B);
/// Electrical lead, minus side.
pub const LEAD_BLACK: Color32 = Color32::from_rgb(0x10, 0x12, 0x13);

/// Light round a lamp, by how bright it is seen (0 to 1).
#[must_use]
pub fn glow(seen: f32) -> Color32 {
    Color32::from_rgb(0xFF, 0xD8, 0x80).gamma_multiply(seen)
}

/// Glass of a lamp, by how bright it is seen.
#[must_use]
pub fn bulb(seen: f32) -> Color32 {
    Color32::from_rgb(0x55, 0x60, 0x62).lerp_to_gamma(Color32::from_rgb(0xFF, 0xEE, 0xBE), seen)
}

/// A filament by its glow: dark wire, dull red, yellow, white.
#[must_use]
pub fn filament(glow: f32) -> Color32 {
    let (dark, red) = (Color32::from_rgb(0x1D, 0x1F, 0x20), Color32::from_rgb(0xC8, 0x32, 0x18));
    let (yellow, white) = (Color32::from_rgb(0xFF, 0xD2, 0x4A), Color32::from_rgb(0xFF, 0xFD, 0xF2));
    match glow {
        g if g < 0.05 => dark.lerp_to_gamma(red, g / 0.05),
        g if g < 0.4 => red.lerp_to_gamma(yellow, (g - 0.05) / 0.35),
        g => yellow.lerp_to_gamma(white, (g - 0.4) / 0.6),
    }
}

/// Least height and width of anything to click, points (WCAG 2.2: 24 px).
pub const TARGET: f32 = 26.0;

/// The typeface of every panel: heavier than egui's own, so that it can be read from the back of a classroom.
/// SIL Open Font License, see `assets/fonts`.
const TYPEFACE: &[u8] = include_bytes!("../../../assets/fonts/Inter-Regular.otf");

/// Puts the typeface in front of egui's own, which stay for signs that it lacks.
fn fonts() -> egui::FontDefinitions {
    let mut fonts = egui::FontDefinitions::default();
    let name = "panel";
    fonts.font_data.insert(name.to_owned(), std::sync::Arc::new(egui::FontData::from_static(TYPEFACE)));
    let fixed = fonts.families.get(&egui::FontFamily::Monospace).and_then(|f| f.first()).cloned();
    let upright = fonts.families.entry(egui::FontFamily::Proportional).or_default();
    upright.insert(0, name.to_owned());
    // Last: the fixed one has some signs that the others lack.
    upright.extend(fixed);
    fonts
}

/// Sets fonts, sizes and colours of a context; once, and when the scale changes.
pub fn apply(ctx: &egui::Context, scale: f32) {
    ctx.set_zoom_factor(scale);
    ctx.set_fonts(fonts());
    ctx.set_theme(egui::Theme::Light);
    ctx.all_styles_mut(|style| {
        use egui::{FontFamily, FontId, TextStyle};
        style.text_styles = [
            (TextStyle::Small, FontId::new(12.5, FontFamily::Proportional)),
            (TextStyle::Body, FontId::new(14.5, FontFamily::Proportional)),
            (TextStyle::Button, FontId::new(14.5, FontFamily::Proportional)),
            (TextStyle::Heading, FontId::new(20.0, FontFamily::Proportional)),
            (TextStyle::Monospace, FontId::new(14.0, FontFamily::Monospace)),
        ]
        .into();
        style.spacing.interact_size = egui::vec2(TARGET, TARGET);
        style.spacing.item_spacing = egui::vec2(8.0, 6.0);
        style.spacing.button_padding = egui::vec2(9.0, 4.0);
        style.spacing.icon_width = 18.0;
        // A bar says that there is more, also before one looks for it.
        style.spacing.scroll.dormant_background_opacity = 0.35;
        style.spacing.scroll.dormant_handle_opacity = 0.75;
        style.spacing.scroll.floating_width = 5.0;
        style.visuals = visuals();
    });
}

fn visuals() -> Visuals {
    let mut v = Visuals::light();
    v.override_text_color = Some(INK);
    v.panel_fill = PAPER;
    v.window_fill = PAPER;
    v.window_stroke = Stroke::new(1.0, RULE);
    v.window_corner_radius = CornerRadius::same(4);
    v.menu_corner_radius = CornerRadius::same(4);
    v.extreme_bg_color = FIELD;
    v.hyperlink_color = ACCENT;
    v.selection.bg_fill = Color32::from_rgb(0xB9, 0xE3, 0xDE);
    v.selection.stroke = Stroke::new(2.0, ACCENT);
    for w in [&mut v.widgets.inactive, &mut v.widgets.hovered, &mut v.widgets.active, &mut v.widgets.open] {
        w.corner_radius = CornerRadius::same(3);
        w.fg_stroke = Stroke::new(1.5, INK);
    }
    v.widgets.inactive.weak_bg_fill = Color32::from_rgb(0xE6, 0xE3, 0xD8);
    v.widgets.inactive.bg_fill = Color32::from_rgb(0xE6, 0xE3, 0xD8);
    v.widgets.inactive.bg_stroke = Stroke::new(1.0, Color32::from_rgb(0x7E, 0x80, 0x7A));
    v.widgets.hovered.weak_bg_fill = Color32::from_rgb(0xD6, 0xE8, 0xE4);
    v.widgets.hovered.bg_stroke = Stroke::new(2.0, ACCENT);
    v.widgets.active.weak_bg_fill = Color32::from_rgb(0xB9, 0xE3, 0xDE);
    v.widgets.active.bg_stroke = Stroke::new(2.0, ACCENT);
    v
}
