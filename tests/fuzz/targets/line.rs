//! A talk of up to three lines: the job changes only where a line was told, and then to what the read-back says.
#![no_main]

use libfuzzer_sys::fuzz_target;
use railhand::grammar::canon;
use railhand::measure::Tape;
use railhand::reply::{Status, plain};
use railhand::session::{Session, considered, peek, step};

fuzz_target!(|talk: &str| {
    let mut session = Session::new();
    for line in talk.lines().take(3) {
        let _ = (peek(&session, line), considered(&session, line));
        let before = session.job().clone();
        let (delta, reply) = step(&session, line);
        session.apply(delta);
        let text = plain(&reply, 72, Tape::SIXTEENTHS);
        assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "{text:?}");
        if reply.status == Status::Told {
            let said = reply.readback.expect("what is told is read back");
            assert!(said == "undo" || said == "redo" || canon::read(&said).is_some(), "{said:?}");
        } else {
            assert!(*session.job() == before, "not told, and the job is another");
        }
    }
});
