//! When to stop looking for a better plan.

/// Says when it is time to stop. The search asks as it goes, and hands over the best so far
/// with the bound it has proved. A clock or a key pressed comes in here, and nowhere else.
pub trait Patience {
    /// Told that so much more work was done; true once it is time to stop. One unit is about
    /// one pattern looked at.
    fn spent(&mut self, work: u64) -> bool;
}

/// So much work and no more: the same plan on any machine.
#[derive(Clone, Copy, Debug)]
pub struct Effort(pub u64);

impl Effort {
    /// Work for a line typed at the prompt: well under half a second on a machine of 2020.
    pub const AT_THE_PROMPT: Effort = Effort(2_000_000);
}

impl Patience for Effort {
    fn spent(&mut self, work: u64) -> bool {
        self.0 = self.0.saturating_sub(work);
        self.0 == 0
    }
}
