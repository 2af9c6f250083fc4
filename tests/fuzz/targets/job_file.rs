//! Any bytes as a job file: refused, or read to a job that comes back from the file written of it.
#![no_main]

use libfuzzer_sys::fuzz_target;
use railhand::job::retold;
use railhand::store::{session_of, whole_file};

fuzz_target!(|bytes: &[u8]| {
    let Ok(session) = session_of(bytes) else { return };
    let again = session_of(whole_file(&session.told_phrases()).as_bytes()).expect("what is written is read");
    assert_eq!(retold(again.job()), retold(session.job()));
});
