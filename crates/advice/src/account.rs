//! What a batch came to in birds, kilograms and money, out of the book: what closing its accounts starts from.

use quantity::CivilDay;

use crate::diary::{Diary, Noted, set_number};
use crate::families::closing;

/// What money goes on and comes from: heads under which a plan's costs and the book's are held against each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Head {
    /// Chicks.
    Chicks,
    /// Feed.
    Feed,
    /// Litter.
    Litter,
    /// Fuel to brood with.
    Fuel,
    /// Disinfectant.
    Disinfectant,
    /// Vaccines.
    Vaccines,
    /// Medicine.
    Medicine,
    /// Equipment, the guard with it.
    Equipment,
    /// Labour that is paid.
    Labour,
    /// The family's own work.
    OwnLabour,
    /// Transport.
    Transport,
    /// Power and water.
    Power,
    /// The house.
    House,
    /// Interest.
    Interest,
    /// Whatever else.
    Other,
}

impl Head {
    /// All of them, in the order in which they are shown.
    pub const ALL: [Head; 15] = [
        Head::Chicks,
        Head::Feed,
        Head::Litter,
        Head::Fuel,
        Head::Disinfectant,
        Head::Vaccines,
        Head::Medicine,
        Head::Equipment,
        Head::Labour,
        Head::OwnLabour,
        Head::Transport,
        Head::Power,
        Head::House,
        Head::Interest,
        Head::Other,
    ];

    /// Its name, part of a message key.
    pub fn name(self) -> &'static str {
        match self {
            Head::Chicks => "chicks",
            Head::Feed => "feed",
            Head::Litter => "litter",
            Head::Fuel => "fuel",
            Head::Disinfectant => "disinfectant",
            Head::Vaccines => "vaccines",
            Head::Medicine => "medicine",
            Head::Equipment => "equipment",
            Head::Labour => "labour",
            Head::OwnLabour => "own-labour",
            Head::Transport => "transport",
            Head::Power => "power",
            Head::House => "house",
            Head::Interest => "interest",
            Head::Other => "other",
        }
    }

    /// The head of something that was bought or cost money, by the word in the book or in a plan.
    pub fn of(word: &str) -> Head {
        match word {
            "chicks" | "chick-deposit" => Head::Chicks,
            "litter" => Head::Litter,
            "fuel" => Head::Fuel,
            "disinfectant" => Head::Disinfectant,
            "vaccine" | "vaccines" => Head::Vaccines,
            "medicine" => Head::Medicine,
            "equipment" | "guard" => Head::Equipment,
            "labour" => Head::Labour,
            "own-labour" => Head::OwnLabour,
            "transport" => Head::Transport,
            "power" | "water" => Head::Power,
            "rent" | "house" => Head::House,
            "interest" => Head::Interest,
            feed if feed.starts_with("feed") => Head::Feed,
            _ => Head::Other,
        }
    }
}

/// A line of the cash book.
#[derive(Clone, Debug, PartialEq)]
pub struct CashLine<'a> {
    /// The entry.
    pub note: &'a Noted,
    /// The head of what was spent; `None` for what came in, and for what was paid or received later.
    pub head: Option<Head>,
    /// What it came to, whenever it is paid.
    pub amount: f64,
    /// Paid at once; what came in is above nothing, what went out below.
    pub paid: f64,
}

impl CashLine<'_> {
    /// What is paid later: bought or sold on credit.
    pub fn later(&self) -> f64 {
        if self.note.kind == "payment" { 0.0 } else { self.amount - self.paid.abs() }
    }
}

/// What one entry moves in money; `None` where it moves none or does not say how much.
pub fn cash_line(note: &Noted) -> Option<CashLine<'_>> {
    let spent = |head: Head, amount: f64| CashLine {
        note,
        head: Some(head),
        amount,
        paid: -paid_at_once(amount, note),
    };
    let got = |amount: f64| CashLine { note, head: None, amount, paid: paid_at_once(amount, note) };
    match note.kind {
        "chicks-placed" => Some(spent(Head::Chicks, note.number("cost")?)),
        "feed-delivered" => Some(spent(Head::Feed, note.number("bags")? * note.number("price_each")?)),
        "purchase" | "cost" => Some(spent(Head::of(note.text("what")?), note.number("cost")?)),
        "sale" | "litter-sold" => Some(got(note.number("income")?)),
        "payment" => {
            let amount = note.number("amount")?;
            let sign = if note.text("way") == Some("received") { 1.0 } else { -1.0 };
            Some(CashLine { note, head: None, amount: 0.0, paid: sign * amount })
        }
        _ => None,
    }
}

fn paid_at_once(amount: f64, note: &Noted) -> f64 {
    match note.text("payment") {
        Some("on-credit" | "part") => note.number("paid_now").unwrap_or_default().min(amount),
        _ => amount,
    }
}

/// What came into the purse less what went out of it, so far.
pub(crate) fn paid(diary: &Diary) -> f64 {
    diary.notes.iter().filter_map(cash_line).map(|line| line.paid).sum()
}

/// What was spent under a head; `None` where nothing was written under it.
pub fn spent_on(diary: &Diary, head: Head) -> Option<f64> {
    let lines = diary.notes.iter().filter_map(cash_line).filter(|line| line.head == Some(head));
    lines.map(|line| line.amount).reduce(|sum, more| sum + more)
}

/// Entries that cost money and do not say how much.
pub fn unpriced(diary: &Diary) -> Vec<&Noted> {
    diary.notes.iter().filter(|note| SPENDS.contains(&note.kind) && cash_line(note).is_none()).collect()
}

/// The kinds that spend money, and those that bring it.
const SPENDS: [&str; 4] = ["chicks-placed", "feed-delivered", "purchase", "cost"];
const BRINGS: [&str; 2] = ["sale", "litter-sold"];

/// What the entries of one kind come to over some days.
#[derive(Clone, Debug, PartialEq)]
pub struct KindSum {
    /// The kind of entry.
    pub kind: &'static str,
    /// In all, of those that say it, in the farm's money.
    pub amount: f64,
    /// What of it is paid later.
    pub later: f64,
    /// Entries that do not say how much.
    pub unpriced: usize,
}

/// What was spent from one day to another, both with, by kind of entry.
pub fn spent_between(diary: &Diary, from: CivilDay, to: CivilDay) -> Vec<KindSum> {
    SPENDS.iter().filter_map(|kind| kind_sum(diary, kind, from, to)).collect()
}

/// What was sold from one day to another, both with, by kind of entry.
pub fn sold_between(diary: &Diary, from: CivilDay, to: CivilDay) -> Vec<KindSum> {
    BRINGS.iter().filter_map(|kind| kind_sum(diary, kind, from, to)).collect()
}

/// `None` where nothing of the kind was written about those days.
fn kind_sum(diary: &Diary, kind: &'static str, from: CivilDay, to: CivilDay) -> Option<KindSum> {
    let notes: Vec<&Noted> = diary.of_kind(kind).filter(|note| (from..=to).contains(&note.day)).collect();
    let lines: Vec<CashLine> = notes.iter().filter_map(|note| cash_line(note)).collect();
    (!notes.is_empty()).then(|| KindSum {
        kind,
        amount: lines.iter().map(|line| line.amount).sum(),
        later: lines.iter().map(CashLine::later).sum(),
        unpriced: notes.len() - lines.len(),
    })
}

/// Reads an amount out of what was written down.
type Amount<'a> = &'a dyn Fn(&Noted) -> Option<f64>;

/// Puts the account among the answers.
pub(crate) fn write(diary: &mut Diary) {
    let mut sums: Vec<(&'static str, f64)> = Vec::new();
    let sum = |of: Amount| diary.notes.iter().filter_map(of).reduce(|sum, more| sum + more);
    let age = |note: &Noted| diary.age(note.day).map(f64::from);
    let keep: [(&'static str, Amount); 8] = [
        (closing::SOLD, &|note| sold(note)),
        (closing::TAKEN, &|note| taken(note)),
        (closing::WEIGHED_BIRDS, &|note| note.number("live_kg").and(sold(note))),
        (closing::WEIGHED_KG, &|note| sold(note).and(note.number("live_kg"))),
        (closing::BIRD_DAYS, &|note| Some(sold(note).or_else(|| taken(note))? * age(note)?)),
        (closing::LAST_AGE, &|note| sold(note).and(age(note))),
        (closing::INCOME_BIRDS, &|note| (note.kind == "sale").then(|| note.number("income"))?),
        (closing::INCOME_LITTER, &|note| (note.kind == "litter-sold").then(|| note.number("income"))?),
    ];
    for (key, of) in keep {
        let all = match key {
            closing::LAST_AGE => diary.notes.iter().filter_map(of).reduce(f64::max),
            _ => sum(of),
        };
        sums.extend(all.map(|all| (key, all)));
    }
    for (head, key) in Head::ALL.iter().zip(closing::SPENT) {
        sums.extend(spent_on(diary, *head).map(|amount| (key, amount)));
    }
    let (mut owed, mut owing) = (0.0, 0.0);
    for line in diary.notes.iter().filter_map(cash_line) {
        match (line.note.kind, line.head) {
            ("payment", _) if line.paid > 0.0 => owing -= line.paid,
            ("payment", _) => owed += line.paid,
            (_, Some(_)) => owed += line.later(),
            (_, None) => owing += line.later(),
        }
    }
    sums.extend([(closing::OWED, owed), (closing::OWING, owing)]);
    for (key, number) in sums {
        set_number(&mut diary.answers, key, number);
    }
}

fn sold(note: &Noted) -> Option<f64> {
    (note.kind == "sale").then(|| note.number("birds"))?
}

/// Birds that left alive and unsold: eaten at home, given, for the workers, added to a sale. What was stolen is a loss.
fn taken(note: &Noted) -> Option<f64> {
    (note.kind == "birds-out" && note.text("why") != Some("stolen")).then(|| note.number("birds"))?
}
