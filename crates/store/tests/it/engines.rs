//! The suite, run on every engine. A function of the suite that is missing here is dead code, and the lints refuse that.

use store::SqliteStore;

use crate::rig::{Database, Folder, open, with_farms};
use crate::suite::{append, read, side};

macro_rules! on_every_engine {
    ($($concern:ident::$test:ident,)+) => {
        mod in_memory {
            use super::*;
            $(#[tokio::test(flavor = "multi_thread")]
            async fn $test() {
                $concern::$test(with_farms(SqliteStore::in_memory().unwrap()).await).await;
            })+
        }

        mod on_sqlite {
            use super::*;
            $(#[tokio::test(flavor = "multi_thread")]
            async fn $test() {
                let folder = Folder::new(stringify!($test));
                $concern::$test(with_farms(open(&folder.book())).await).await;
            })+
        }

        mod on_postgres {
            use super::*;
            $(#[tokio::test(flavor = "multi_thread")]
            async fn $test() {
                let Some(database) = Database::new(stringify!($test)).await else { return };
                $concern::$test(with_farms(database.store().await).await).await;
                database.drop_if_there().await;
            })+
        }
    };
}

on_every_engine! {
    append::entries_come_back_as_written,
    append::nothing_is_a_legal_append,
    append::sending_twice_is_harmless,
    append::the_same_id_with_other_bytes_keeps_both,
    append::the_same_place_with_another_hash_keeps_both,
    append::a_clash_is_told_again_when_the_answer_was_lost,
    append::two_of_one_call_that_clash_are_both_told,
    append::an_entry_twice_in_one_call_is_kept_once,
    append::a_viewer_writes_nothing,
    append::an_entry_of_another_farm_is_refused_with_all_beside_it,
    append::an_unknown_farm_is_refused,
    append::what_cannot_be_filed_is_refused,
    append::an_entry_over_the_bound_is_refused,
    append::sixteen_senders_at_once_land_each_entry_once,
    append::two_that_clash_at_once_are_told_apart,
    append::the_same_entries_in_opposite_order_at_once_are_kept_once,
    read::farms_do_not_see_each_other,
    read::the_tip_is_the_devices_last,
    read::the_reach_stops_at_a_gap_and_goes_on_when_it_closes,
    read::what_is_missing_comes_in_frames,
    read::a_frame_is_bounded_in_bytes_but_never_empty,
    read::a_frame_never_parts_two_at_one_place,
    read::what_lies_beyond_a_gap_is_sent,
    read::a_sound_book_checks_clean,
    side::a_draft_is_kept_listed_and_thrown_away,
    side::an_older_draft_does_not_win,
    side::a_draft_over_the_bound_is_refused,
    side::a_draft_needs_a_key_that_can_be_filed,
    side::a_viewer_drafts_nothing,
    side::drafts_and_names_need_a_farm,
    side::a_name_is_given_changed_and_blanked_for_good,
    side::only_the_owner_names_others,
    side::a_name_must_be_one,
    side::farms_are_listed_oldest_first,
    side::a_book_of_several_has_no_sole_farm,
}

mod sole {
    use super::*;

    #[tokio::test(flavor = "multi_thread")]
    async fn on_sqlite() {
        let folder = Folder::new("sole");
        side::askers_at_once_get_one_farm([open(&folder.book()), open(&folder.book())]).await;
    }

    #[tokio::test(flavor = "multi_thread")]
    async fn on_postgres() {
        let Some(database) = Database::new("sole").await else { return };
        side::askers_at_once_get_one_farm([database.store().await, database.store().await]).await;
        database.drop_if_there().await;
    }
}
