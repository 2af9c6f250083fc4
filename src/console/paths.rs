//! Where the console keeps what it remembers.

use std::ffi::OsString;
use std::path::PathBuf;

/// The history file: `railhand/history` in the user's data directory. `None` where there is none.
pub(super) fn history() -> Option<PathBuf> {
    Some(data()?.join("history"))
}

/// The program's own folder: `railhand` in the user's data directory.
pub(super) fn data() -> Option<PathBuf> {
    let data = data_dir(std::env::var_os("XDG_DATA_HOME"), std::env::var_os("HOME"))?;
    Some(data.join("railhand"))
}

/// By the XDG Base Directory Specification: `$XDG_DATA_HOME` where it is set and absolute,
/// else `$HOME/.local/share`.
fn data_dir(xdg: Option<OsString>, home: Option<OsString>) -> Option<PathBuf> {
    let absolute = |v: OsString| Some(PathBuf::from(v)).filter(|p| p.is_absolute());
    xdg.and_then(absolute).or_else(|| Some(home.and_then(absolute)?.join(".local/share")))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// XDG Base Directory Specification, "Environment variables": an unset or empty
    /// variable takes the default, and a relative path is to be ignored.
    #[test]
    fn the_data_directory_follows_xdg() {
        let rows = [
            (Some("/d"), Some("/h"), Some("/d")),
            (None, Some("/h"), Some("/h/.local/share")),
            (Some(""), Some("/h"), Some("/h/.local/share")),
            (Some("rel"), Some("/h"), Some("/h/.local/share")),
            (Some("rel"), None, None),
            (None, Some("h"), None),
        ];
        for (xdg, home, want) in rows {
            assert_eq!(
                data_dir(xdg.map(Into::into), home.map(Into::into)),
                want.map(PathBuf::from),
                "{xdg:?} {home:?}"
            );
        }
    }
}
