//! Which sizes a post at an end may take.

use crate::job::{End, PostRole};
pub use crate::solve::post_width;

/// The roles of the post at an end; one that carries a gate is a gate post too.
pub(super) fn roles(end: End, gate: bool) -> Vec<PostRole> {
    let own = match end {
        End::Corner | End::InsideCorner | End::AngledCorner => Some(PostRole::Corner),
        End::EndPost | End::OpenEnd | End::House | End::Wall => Some(PostRole::End),
        End::GatePost => Some(PostRole::Gate),
        End::StairHead | End::BottomNewel => Some(PostRole::Stair),
    };
    own.into_iter().chain(gate.then_some(PostRole::Gate)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{PostSize, Setting, Settings};
    use crate::measure::{Length, Lumber};

    fn inches(settings: &Settings, roles: &[PostRole]) -> Length {
        post_width(settings, roles).as_length().expect("a width is a length")
    }

    /// PS 20 size table: a dry 4x4 dresses to 3 1/2, a 6x6 to 5 1/2.
    #[test]
    fn the_size_follows_what_was_told() {
        let mut s = Settings::default();
        assert_eq!(inches(&s, &[PostRole::Corner]), Length::sixteenths(56));
        s.set(Setting::Post(PostRole::Corner, PostSize::Lumber(Lumber::SIX_BY_SIX)));
        let rows: [(&[PostRole], i64); 4] =
            [(&[PostRole::Corner], 88), (&[PostRole::Line], 56), (&[], 56), (&[PostRole::Corner, PostRole::Gate], 88)];
        for (roles, sixteenths) in rows {
            assert_eq!(inches(&s, roles), Length::sixteenths(sixteenths), "{roles:?}");
        }
    }

    #[test]
    fn a_post_in_two_roles_takes_the_larger() {
        let mut s = Settings::default();
        s.set(Setting::Post(PostRole::End, PostSize::Width(Length::inches(4))));
        s.set(Setting::Post(PostRole::Gate, PostSize::Width(Length::inches(6))));
        assert_eq!(inches(&s, &roles(End::EndPost, true)), Length::inches(6));
        assert_eq!(inches(&s, &roles(End::EndPost, false)), Length::inches(4));
    }
}
