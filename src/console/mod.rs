//! The prompt: reedline, history, highlighting.
