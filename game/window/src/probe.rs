//! Whether there is a display and a graphics adapter, asked before the app is built: window and renderer
//! stop the program when there is none.

use assess::locale::sentence::Sentence;
use assess::sentence;

/// Why there can be no window.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum NoWindow {
    /// Nobody has said which display.
    DisplayUnset,
    /// The display cannot be opened.
    NoDisplay {
        /// What the system said.
        why: String,
    },
    /// No graphics adapter.
    NoAdapter,
}

impl NoWindow {
    /// Why, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::DisplayUnset => {
                sentence!("window-display-unset", "there is no display (DISPLAY is not set)")
            }
            Self::NoDisplay { why } => {
                sentence!("window-no-display", "there is no display ({why})", why = why)
            }
            Self::NoAdapter => sentence!(
                "window-no-adapter",
                "there is no graphics adapter that can draw: no driver was found that works; on Debian the package \
                 mesa-vulkan-drivers has a software one"
            ),
        }
    }
}

/// A graphics adapter, as far as the picture's quality depends on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Adapter {
    /// Its name.
    pub name: String,
    /// It draws with the processor.
    pub software: bool,
    /// Where it was found; the renderer looks there too.
    pub backends: wgpu::Backends,
}

/// Looks for a display.
///
/// # Errors
/// When there is none that the window system can open.
#[cfg(all(unix, not(target_os = "macos")))]
pub fn display() -> Result<(), NoWindow> {
    if std::env::var_os("DISPLAY").is_none_or(|display| display.is_empty()) {
        return Err(NoWindow::DisplayUnset);
    }
    match x11rb::connect(None) {
        Ok(_) => Ok(()),
        Err(error) => Err(NoWindow::NoDisplay { why: error.to_string() }),
    }
}

/// Looks for a display: these systems always have one for a program that a person started.
///
/// # Errors
/// None.
#[cfg(not(all(unix, not(target_os = "macos"))))]
pub fn display() -> Result<(), NoWindow> {
    Ok(())
}

/// Looks for a graphics adapter as the renderer will.
///
/// # Errors
/// When there is none.
pub fn adapter() -> Result<Adapter, NoWindow> {
    let wanted = wgpu::Backends::from_env();
    // OpenGL last: merely asking for it makes some systems complain on the terminal.
    let tries = match wanted {
        Some(backends) => vec![backends],
        None => vec![wgpu::Backends::PRIMARY, wgpu::Backends::GL],
    };
    for backends in tries {
        let instance = wgpu::Instance::new(wgpu::InstanceDescriptor {
            backends,
            ..wgpu::InstanceDescriptor::new_without_display_handle()
        });
        let options = wgpu::RequestAdapterOptions {
            power_preference: wgpu::PowerPreference::HighPerformance,
            ..Default::default()
        };
        // What the library says names every way it was not asked for: nobody is helped by that.
        if let Ok(adapter) = bevy::tasks::block_on(instance.request_adapter(&options)) {
            let info = adapter.get_info();
            let software = info.device_type == wgpu::DeviceType::Cpu;
            return Ok(Adapter { name: info.name, software, backends });
        }
    }
    Err(NoWindow::NoAdapter)
}
