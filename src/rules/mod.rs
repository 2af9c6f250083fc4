//! The rule registry: id, what it says, its source, its level, its check.
