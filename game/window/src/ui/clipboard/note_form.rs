//! The form in which a reading is written down: a number with its unit, and the line of the record it is
//! for. The trainee types what he read; nothing is proposed.

use egui::{Button, Key, Label, Popup, RectAlign, RichText, TextEdit, WidgetInfo, WidgetType, vec2};
use sim_core::action::{Action, Written};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::{pad, paper};
use super::note::NoteForm;
use super::note_face;
use front::ask::Ask;
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;

/// Units as the workshop keeps them; pressures are added in the unit of the settings.
const UNITS: [&str; 7] = ["V", "A", "ohm", "C", "s", "deg", "mm"];

/// Units as people type them.
fn unit_of(typed: &str) -> Option<&'static str> {
    Some(match typed.trim().to_lowercase().as_str() {
        "kpa" => "kPa",
        "mbar" | "hpa" => "mbar",
        "inhg" => "inHg",
        "v" | "volt" => "V",
        "a" | "ampere" => "A",
        "ohm" | "ω" | "Ω" => "ohm",
        "c" | "°c" | "grad c" => "C",
        "s" | "sec" | "sek" => "s",
        "deg" | "°" | "grad" => "deg",
        "mm" => "mm",
        _ => return None,
    })
}

/// A number as it may be typed: a sign of any kind, a comma for the point.
fn number_of(typed: &str) -> Option<f64> {
    let plain = typed.trim().replace(['−', '–'], "-").replace(',', ".").replace(' ', "");
    plain.parse::<f64>().ok().filter(|v| v.is_finite())
}

/// What was written, in the unit the workshop keeps; or the key of what is wrong.
///
/// # Errors
/// No number, or no unit.
pub(super) fn read(typed: &str, picked: Option<&'static str>) -> Result<Written, &'static str> {
    let cut = typed
        .char_indices()
        .find(|(_, c)| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '−' | '–' | '+' | ' ')))
        .map_or(typed.len(), |(i, _)| i);
    let (number, unit) = typed.split_at(cut);
    let value = number_of(number).ok_or("note-no-number")?;
    let unit = if unit.trim().is_empty() { picked } else { unit_of(unit) };
    let unit = unit.ok_or("note-no-unit")?;
    let per_kpa = PressureUnit::ALL.into_iter().find(|u| u.symbol() == unit).map(PressureUnit::per_kpa);
    Ok(match per_kpa {
        Some(per_kpa) => Written { value: value / per_kpa, unit: "kPa".to_owned() },
        None => Written { value, unit: unit.to_owned() },
    })
}

/// The choice of a line of the record.
pub(super) fn pick_line(
    row: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    salt: u32,
    line: &mut Option<String>,
) {
    let Some(car) = shop.car() else { return };
    let none = words.say("note-no-line");
    let shown = line.as_ref().map_or_else(|| none.clone(), |id| words.record_short(shop, id));
    let label = words.say_with("note-line", &[("n", salt.into())]);
    let width = (row.available_width() - 12.0).clamp(120.0, 230.0);
    let button =
        row.add(Button::new(()).left_text(shown).right_text("▾").min_size(vec2(width, theme::TARGET)));
    // The line that is chosen now has the focus when the list opens: Tab and the arrows go on from there.
    let opened = button.clicked();
    // All lines at once, beside the clipboard: a choice that must be scrolled for is not seen.
    Popup::menu(&button)
        .align(RectAlign::RIGHT_START)
        .align_alternatives(&[RectAlign::RIGHT_END, RectAlign::RIGHT])
        .show(|list| {
            list.spacing_mut().item_spacing.y = 0.0;
            list.spacing_mut().interact_size.y = theme::TARGET;
            let before = line.clone();
            let mut chosen = false;
            let mut offer = |id: Option<String>, name: String| {
                let now = before == id;
                let row = list.selectable_value(line, id, name);
                if opened && now {
                    row.request_focus();
                }
                chosen |= row.clicked();
                row
            };
            offer(None, none);
            for item in &car.record {
                offer(Some(item.id.clone()), words.record_short(shop, &item.id))
                    .on_hover_text(words.record_line(shop, &item.id));
            }
            // A key closes the list as a click does, and the focus goes back to where it was.
            if chosen {
                list.close();
                button.request_focus();
            }
        });
    button.widget_info(|| {
        let mut info = WidgetInfo::labeled(WidgetType::ComboBox, true, &label);
        info.current_text_value =
            Some(line.as_ref().map_or_else(String::new, |id| words.record_short(shop, id)));
        info
    });
}

/// The number pad, and the units beside it: a note needs no keyboard.
fn pad_and_units(inner: &mut egui::Ui, words: &Words, pressure: PressureUnit, form: &mut NoteForm) {
    inner.horizontal_top(|row| {
        if let Some(key) = pad::show(row, words, pad::Needs::Signed) {
            pad::into_text(&mut form.typed, key, &words.say("decimal-mark"));
            form.wrong = None;
        }
        row.vertical(|column| {
            column.horizontal_wrapped(|units| {
                units.spacing_mut().item_spacing = vec2(3.0, 3.0);
                for unit in std::iter::once(pressure.symbol()).chain(UNITS) {
                    let text = front::words::pretty_unit(unit);
                    if units.add(paper::choice(form.unit == Some(unit), text)).clicked() {
                        form.unit = Some(unit);
                    }
                }
            });
        });
    });
}

/// Shows the form.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(mut form) = ui.clipboard.note.take() else { return };
    let mut keep = true;
    let top = page.cursor().top();
    let opens = !form.begun;
    paper::boxed(page, theme::FIELD, |inner| {
        note_face::show(inner, shop, words, ui.prefs.pressure, form.reading);
        let prompt = inner.label(words.say("note-what"));
        let field = inner.add(
            TextEdit::singleline(&mut form.typed)
                .id_salt("note-number")
                .hint_text(words.say("note-hint"))
                .text_color(theme::PEN)
                .desired_width(f32::INFINITY)
                .min_size(egui::vec2(0.0, theme::TARGET)),
        );
        let field = field.labelled_by(prompt.id);
        if !std::mem::replace(&mut form.begun, true) {
            field.request_focus();
        }
        let entered = field.lost_focus() && inner.input(|i| i.key_pressed(Key::Enter));
        pad_and_units(inner, words, ui.prefs.pressure, &mut form);
        inner.label(words.say("note-for"));
        pick_line(inner, shop, words, form.reading, &mut form.record);
        if let Some(wrong) = form.wrong {
            inner.add(Label::new(RichText::new(words.say(wrong)).color(theme::BREACH)).wrap());
        }
        inner.horizontal_wrapped(|row| {
            if row.add(paper::main_button(words.say("note-do"))).clicked() || entered {
                match read(&form.typed, form.unit) {
                    Ok(written) => {
                        ui.asks.push(Ask::Do(Action::Note {
                            reading: form.reading,
                            written: Some(written),
                            record: form.record.clone(),
                        }));
                        keep = false;
                    }
                    Err(wrong) => form.wrong = Some(wrong),
                }
            }
            if row.add(paper::button(words.say("form-cancel"))).clicked() {
                keep = false;
            }
        });
    });
    if opens {
        // All of it can be seen, the face and the buttons.
        let whole = page.max_rect().x_range();
        let whole = egui::Rect::from_x_y_ranges(whole, top..=page.min_rect().bottom());
        page.scroll_to_rect(whole, None);
    }
    ui.clipboard.note = Some(form);
    if !keep {
        // Should the note be refused, or the form have been left by a slip, what was written is still there.
        ui.clipboard.put_aside();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wrote(value: f64, unit: &str) -> Result<Written, &'static str> {
        Ok(Written { value, unit: unit.into() })
    }

    #[test]
    fn a_number_is_read_as_people_type_it() {
        assert_eq!(read("-58 kPa", None), wrote(-58.0, "kPa"));
        assert_eq!(read("−12,63V", None), wrote(-12.63, "V"));
        assert_eq!(read("84", Some("ohm")), wrote(84.0, "ohm"));
        assert_eq!(read("21 °C", Some("V")), wrote(21.0, "C"));
        assert_eq!(read("vier", Some("V")), Err("note-no-number"));
        assert_eq!(read("12.6", None), Err("note-no-unit"));
        assert_eq!(read("12.6 bananas", Some("V")), Err("note-no-unit"));
    }

    #[test]
    fn pressures_are_kept_in_kpa() {
        assert_eq!(read("-580", Some("mbar")), wrote(-58.0, "kPa"));
        let written = read("-17.13 inHg", None).unwrap();
        // 1 inHg = 3.386 39 kPa (at 0 °C).
        assert!((written.value + 58.0).abs() < 0.02, "{}", written.value);
        assert_eq!(written.unit, "kPa");
    }
}
