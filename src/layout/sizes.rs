//! How wide a post is, and who says so.

use crate::figure::{Fig, Value, Why};
use crate::job::{End, PostRole, PostSize, Settings};
use crate::limits;
use crate::measure::{Length, Lumber};

/// The width along the run of a post in these roles, in inches.
///
/// A post in two roles (a corner that carries a gate) takes the larger size told for
/// either. No size for its roles: the size told for all posts; none told: a 4x4.
pub fn post_width(settings: &Settings, roles: &[PostRole]) -> Fig {
    let told = |role: PostRole| settings.posts.iter().filter(move |(r, _)| *r == role).map(|(_, size)| *size);
    let widest = |sizes: Vec<PostSize>| sizes.into_iter().filter_map(figure).max_by_key(Fig::as_length);
    widest(roles.iter().flat_map(|r| told(*r)).collect())
        .or_else(|| widest(told(PostRole::All).collect()))
        .unwrap_or_else(default)
}

fn figure(size: PostSize) -> Option<Fig> {
    let why = match size {
        PostSize::Lumber(l) => Why::Table("dressed dry width of the post told", l.table()),
        PostSize::Width(_) => Why::Told("the post's width"),
    };
    size.width().map(|w| Fig::length(w, why))
}

fn default() -> Fig {
    let nominal = u16::try_from(limits::POST_SIZE.value).unwrap_or(4);
    // The size table holds the default post; a test holds it to that.
    let width = Lumber::by(nominal, nominal).dressed().map_or(Length::ZERO, |(_, wide)| wide);
    let size = Fig::new(Value::Count(u64::from(nominal)), Why::Default(&limits::POST_SIZE));
    Fig::length(width, Why::Formula("dressed dry width by the PS 20 size table", vec![("nominal size", size)]))
}

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
    use crate::job::Setting;

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
