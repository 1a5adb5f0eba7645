//! Who is asking, for which farm, on which device, and what they may do.

use crate::entry::{DeviceId, FarmId, PersonId};

/// Leave to touch one farm's book. Every call on a store takes one, so that no line of code can reach a book by
/// forgetting to ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Access {
    farm: FarmId,
    person: PersonId,
    device: DeviceId,
    role: Role,
}

/// What a person is to a farm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Reads and writes, and decides who else does.
    Owner,
    /// Reads and writes.
    Helper,
    /// Reads.
    Viewer,
}

impl Access {
    /// Grants access. Only the code that checks a session, and the code that serves the owner of this machine over the
    /// loopback address, may call it; everyone else is handed one.
    pub fn granted(farm: FarmId, person: PersonId, device: DeviceId, role: Role) -> Self {
        Self { farm, person, device, role }
    }

    /// The farm whose book may be touched.
    pub fn farm(&self) -> FarmId {
        self.farm
    }

    /// Who asks.
    pub fn person(&self) -> PersonId {
        self.person
    }

    /// The device they ask from, in whose series they write.
    pub fn device(&self) -> DeviceId {
        self.device
    }

    /// What they are to the farm.
    pub fn role(&self) -> Role {
        self.role
    }

    /// Whether they may write in the book.
    pub fn may_write(&self) -> bool {
        match self.role {
            Role::Owner | Role::Helper => true,
            Role::Viewer => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn a_viewer_reads_only() {
        let id = Uuid::from_u128(1);
        let as_a = |role| Access::granted(FarmId(id), PersonId(id), DeviceId(id), role);
        assert!(as_a(Role::Owner).may_write());
        assert!(as_a(Role::Helper).may_write());
        assert!(!as_a(Role::Viewer).may_write());
    }
}
