//! Numbers and units as a person writes them in the language shown.

use super::Locale;

/// A unit as it is written on paper.
#[must_use]
pub fn pretty_unit(unit: &str) -> &str {
    match unit {
        "ohm" => "Ω",
        "C" => "°C",
        "deg" => "°",
        other => other,
    }
}

impl Locale {
    /// A number with this many decimals, with the language's decimal mark and a true minus sign.
    #[must_use]
    pub fn number(&self, value: f64, decimals: usize) -> String {
        let text = format!("{value:.decimals$}");
        // What rounds to nothing has no sign.
        let zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
        let text = if zero { text.trim_start_matches('-').to_owned() } else { text.replace('-', "−") };
        text.replace('.', &self.say("decimal-mark"))
    }

    /// A number as short as it is exact, up to three decimals: as somebody wrote it.
    #[must_use]
    pub fn plain(&self, value: f64) -> String {
        let rounded = (value * 1e3).round() / 1e3;
        let decimals = (0..3).find(|d| (rounded * 10_f64.powi(*d)).fract() == 0.0).unwrap_or(3);
        self.number(rounded, decimals as usize)
    }
}
