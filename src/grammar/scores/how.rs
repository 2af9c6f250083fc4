//! How an item fills its row.

/// How an item fills its row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How<'a> {
    /// With what it says.
    Set,
    /// With more by so much.
    Add,
    /// With less by so much.
    Less,
    /// With so many times as much.
    Times,
    /// With nothing: "no gate".
    Nothing,
    /// It is only named.
    Named,
    /// With these words, which are not the item's own: "end" may be the "from-end".
    Words(&'a str),
}

impl<'a> How<'a> {
    /// The way a label of the weights says; other words stand behind an equals sign.
    pub fn of(label: &'a str) -> How<'a> {
        match label {
            "add" => How::Add,
            "less" => How::Less,
            "times" => How::Times,
            "nothing" => How::Nothing,
            "named" => How::Named,
            _ => label.strip_prefix('=').map_or(How::Set, How::Words),
        }
    }

    /// Its label in the weights.
    pub fn label(&self) -> String {
        let plain = match self {
            How::Words(words) => return format!("={words}"),
            How::Set => "set",
            How::Add => "add",
            How::Less => "less",
            How::Times => "times",
            How::Nothing => "nothing",
            How::Named => "named",
        };
        plain.to_owned()
    }
}
