//! Who asks. Until there are accounts, that is the owner of this machine over the loopback address, and this file is the
//! only one that grants access.

use std::sync::{Mutex, PoisonError};

use book::{Access, DeviceId, FarmId, PersonId, Role};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use store::{Farm, Store, StoreError};
use uuid::Uuid;

/// Where the person and the device of the loopback are kept, among the drafts: no part of the book, but of the file.
const LOOPBACK_KEY: &str = "loopback";

/// Who serves themselves over the loopback address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Loopback {
    /// The farm.
    pub farm: FarmId,
    /// The person.
    pub person: PersonId,
    /// The device in whose series is written.
    pub device: DeviceId,
    /// What the person is to the farm.
    pub role: Role,
}

/// What stands in the file about the loopback.
#[derive(Serialize, Deserialize)]
struct Kept {
    person: PersonId,
    device: DeviceId,
}

/// The owner of a grower's own book: its one farm, with the person and the device that wrote from here before; all three
/// are made where the book is new. A command beside the server takes the same.
///
/// - `now_millis`: the wall clock, milliseconds since 1970 UTC
/// - `new_id`: a fresh UUID v7 at each call
///
/// # Errors
/// `SeveralFarms` in the book of a co-operative; else the engine's reasons.
pub async fn sole_farm(
    store: &dyn Store,
    now_millis: i64,
    new_id: fn() -> Uuid,
) -> Result<Loopback, StoreError> {
    sole_farm_like(store, FarmId(new_id()), now_millis, new_id).await
}

/// The same, where a new book is to be of a farm that is known already: it is filled from an export.
///
/// # Errors
/// As [`sole_farm`].
pub async fn sole_farm_like(
    store: &dyn Store,
    farm: FarmId,
    now_millis: i64,
    new_id: fn() -> Uuid,
) -> Result<Loopback, StoreError> {
    let farm = store.sole_farm(Farm { id: farm, created_millis: now_millis }).await?.id;
    let fresh = Kept { person: PersonId(new_id()), device: DeviceId(new_id()) };
    let candidate = Loopback { farm, person: fresh.person, device: fresh.device, role: Role::Owner };
    let access = candidate.access();
    let kept = store.draft(&access, LOOPBACK_KEY).await?;
    if let Some(kept) = kept.and_then(|draft| serde_json::from_value::<Kept>(draft.body).ok()) {
        return Ok(Loopback { person: kept.person, device: kept.device, ..candidate });
    }
    candidate.keep(store, now_millis).await?;
    Ok(candidate)
}

/// Leave to read a grower's own book, which is left as it is; `None` where it holds no farm yet.
///
/// # Errors
/// `SeveralFarms` in the book of a co-operative; else the engine's reasons.
pub async fn reader(store: &dyn Store) -> Result<Option<Access>, StoreError> {
    let farms = store.farms().await?;
    let nobody = Uuid::nil();
    match farms.as_slice() {
        [] => Ok(None),
        [farm] => Ok(Some(Access::granted(farm.id, PersonId(nobody), DeviceId(nobody), Role::Viewer))),
        many => Err(StoreError::SeveralFarms { count: many.len() }),
    }
}

impl Loopback {
    /// Leave to act as this person.
    pub fn access(&self) -> Access {
        Access::granted(self.farm, self.person, self.device, self.role)
    }

    /// The same person, from now on on another device: another process has written in the series of the old one at the same
    /// time.
    ///
    /// # Errors
    /// The engine's reasons.
    pub async fn on_a_new_device(
        self,
        store: &dyn Store,
        device: DeviceId,
        now_millis: i64,
    ) -> Result<Loopback, StoreError> {
        let minted = Loopback { device, ..self };
        minted.keep(store, now_millis).await?;
        Ok(minted)
    }

    async fn keep(&self, store: &dyn Store, now_millis: i64) -> Result<(), StoreError> {
        let body = serde_json::json!({ "person": self.person, "device": self.device });
        store.put_draft(&self.access(), LOOPBACK_KEY, &body, now_millis).await?;
        Ok(())
    }
}

/// The device of a phone, which everybody may know, from its key, which nobody may. It is of version 8 of the ids: of our own
/// making.
fn device_of(farm: FarmId, key: &[u8]) -> DeviceId {
    let digest = Sha256::new().chain_update(b"phone").chain_update(farm.0).chain_update(key).finalize();
    let mut bytes = [0; 16];
    bytes.iter_mut().zip(digest).for_each(|(byte, of_digest)| *byte = of_digest);
    DeviceId(uuid::Builder::from_custom_bytes(bytes).into_uuid())
}

/// The loopback's session: one person, on a device that changes only when it turns out to have been copied.
pub(crate) struct Session {
    loopback: Mutex<Loopback>,
}

impl Session {
    pub(crate) fn new(loopback: Loopback) -> Session {
        Session { loopback: Mutex::new(loopback) }
    }

    /// Leave for one request.
    pub(crate) fn access(&self) -> Access {
        self.loopback().access()
    }

    /// Leave for what has waited on a phone, to be written in a series of its own: what two phones wrote of one day without
    /// seeing each other is then asked about, and never silently put in the place of the other.
    ///
    /// - `key`: made by the phone and known to nobody else, so that no other page writes in its series
    pub(crate) fn phone(&self, key: Uuid) -> Access {
        let owner = self.loopback();
        Loopback { device: device_of(owner.farm, key.as_bytes()), ..owner }.access()
    }

    /// Leave for a phone that was joined over the farm's network. It writes in a series of its own.
    pub(crate) fn helper(&self, person: PersonId, secret: &str) -> Access {
        let farm = self.loopback().farm;
        Loopback { farm, person, device: device_of(farm, secret.as_bytes()), role: Role::Helper }.access()
    }

    /// Leave for whoever is not known: rows that are for anyone show nothing of the book.
    pub(crate) fn stranger(&self) -> Access {
        let nobody = Uuid::nil();
        Access::granted(self.loopback().farm, PersonId(nobody), DeviceId(nobody), Role::Viewer)
    }

    fn loopback(&self) -> Loopback {
        *self.loopback.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Goes on under a new device.
    pub(crate) async fn mint_device(
        &self,
        store: &dyn Store,
        device: DeviceId,
        now_millis: i64,
    ) -> Result<(), StoreError> {
        let minted = self.loopback().on_a_new_device(store, device, now_millis).await?;
        *self.loopback.lock().unwrap_or_else(PoisonError::into_inner) = minted;
        Ok(())
    }
}
