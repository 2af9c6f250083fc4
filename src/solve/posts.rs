//! How wide a post is, and who says so.

use super::Source;
use crate::figure::{Fig, Why};
use crate::job::{PostRole, PostSize};
use crate::measure::Length;
use crate::quantity::RowId;

/// The width along the run of a post in these roles, in inches.
///
/// A post in two roles (a corner that carries a gate) takes the larger size told for either. No size for its roles: the size told for all
/// posts; none told: the default.
pub fn post_width(of: &impl Source, roles: &[PostRole]) -> Fig {
    let posts = &of.settings().posts;
    let told = |role: PostRole| posts.iter().filter(move |(r, _)| *r == role).map(|(_, size)| *size);
    let widest = |sizes: Vec<PostSize>| sizes.into_iter().filter_map(figure).max_by_key(Fig::as_length);
    widest(roles.iter().flat_map(|r| told(*r)).collect())
        .or_else(|| widest(told(PostRole::All).collect()))
        .or_else(|| super::known::default(of, RowId::PostWidth))
        .unwrap_or_else(|| Fig::told(Length::ZERO, RowId::PostWidth.row().name))
}

/// The size told for posts in a role, else for all; `None` where neither was told.
pub fn post_size(of: &impl Source, role: PostRole) -> Option<PostSize> {
    of.settings().post(role)
}

/// Every size told, with the posts it is for.
pub fn told_sizes(of: &impl Source) -> &[(PostRole, PostSize)] {
    &of.settings().posts
}

/// The widest post told of any role; the default where none was.
pub fn widest_post(of: &impl Source) -> Fig {
    let told = told_sizes(of).iter().filter_map(|(_, size)| figure(*size));
    told.max_by_key(Fig::as_length).unwrap_or_else(|| post_width(of, &[]))
}

/// A told size's width.
pub(super) fn figure(size: PostSize) -> Option<Fig> {
    let why = match size {
        PostSize::Lumber(l) => Why::Table("dressed dry width of the post told", l.table()),
        PostSize::Width(_) => Why::Told("the post's width"),
    };
    size.width().map(|w| Fig::length(w, why))
}

/// The width of the posts of one row of the table.
pub(super) fn row(of: &impl Source, row: RowId) -> Option<Fig> {
    let role = match row {
        RowId::PostWidth => PostRole::Line,
        RowId::CornerPostWidth => PostRole::Corner,
        RowId::EndPostWidth => PostRole::End,
        RowId::GatePostWidth => PostRole::Gate,
        RowId::StairPostWidth => PostRole::Stair,
        _ => return None,
    };
    of.settings().post(role).and_then(figure)
}
