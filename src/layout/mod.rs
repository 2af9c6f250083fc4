//! Where posts go: fixed posts first, then even bays between them.
