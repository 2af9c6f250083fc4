//! Plain text of a reply.
use super::Reply;

/// The answer as plain text, wrapped to `width` columns.
pub fn plain(reply: &Reply, width: usize) -> String {
    let _ = (reply, width);
    String::new()
}
