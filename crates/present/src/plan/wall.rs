//! The sheet at the house door: a week on one page, to be filled in with a pencil.

use advice::door_sheet::{self, DoorDay, Expected, Todo};
use quantity::{CivilDay, Unit};

use super::{Shown, waiting};
use crate::document::{Blank, Block, DayGrid, Document, Fill, GridPicture, GridRow, Level};
use crate::scene::spread::Spread;
use crate::{say, show};

impl Shown<'_> {
    /// One sheet a week. What is not known is left to the pencil, dates too, and the sheet says what to answer.
    pub fn wall_sheets(&self) -> Vec<Document> {
        let weeks = door_sheet::weeks(self.plan, self.past);
        weeks.iter().enumerate().map(|(at, days)| self.wall_sheet(at + 1, days)).collect()
    }

    fn wall_sheet(&self, week: usize, days: &[DoorDay]) -> Document {
        let title = say!(self.words, "wall-title", week = week.to_string());
        let is_expected = days.iter().any(|day| day.expected.is_some());
        let waiting = (!is_expected).then(|| self.waiting("waiting-wall", &waiting::DAYS));
        let mut blocks = vec![self.wall_head(&title)];
        blocks.extend(waiting);
        blocks.extend([
            Block::Blanks(self.wall_birds(days)),
            Block::Blanks(self.blanks(&[
                ("wall-vet", 20),
                ("wall-state-vet", 20),
                ("wall-owner", 20),
                ("wall-hatchery", 20),
                ("wall-feed-shop", 20),
            ])),
            Block::DayGrid(self.wall_grid(days)),
            Block::Beside(vec![
                (48, vec![Block::Blanks(self.wall_foot())]),
                (52, vec![Block::Caution(self.caution("wall", Level::Danger, 3))]),
            ]),
        ]);
        Document { title, subtitle: self.subtitle(), blocks }
    }

    fn wall_head(&self, title: &str) -> Block {
        let text = say!(self.words, "wall-head", title = title, whose = self.subtitle());
        Block::Heading { level: 2, text, anchor: "wall" }
    }

    /// Lines to write on, by the keys of their words and their widths.
    pub(super) fn blanks(&self, rows: &[(&str, u8)]) -> Vec<Blank> {
        let blank = |(key, width_percent): &(&str, u8)| Blank {
            label: self.words.plain(key),
            width_percent: *width_percent,
        };
        rows.iter().map(blank).collect()
    }

    /// Birds alive on the first day, and what blocks a sale.
    fn wall_birds(&self, days: &[DoorDay]) -> Vec<Blank> {
        let first = days.first();
        let birds = first.and_then(|day| day.expected).map(|expected| expected.alive);
        let date = first.and_then(|day| day.date).map(|date| self.weekday(date));
        let label = match birds.zip(date) {
            Some((birds, day)) => {
                let birds = show::quantity(birds, Unit::Birds, 0, self.viewer);
                say!(self.words, "wall-alive", day = day, birds = birds)
            }
            None => self.words.plain("wall-alive-first"),
        };
        let alive = Blank { label, width_percent: 24 };
        let others = self.blanks(&[
            ("wall-next-medicine", 24),
            ("wall-medicine-day", 12),
            ("wall-last-dose", 18),
            ("wall-sale-date", 22),
        ]);
        std::iter::once(alive).chain(others).collect()
    }

    fn wall_foot(&self) -> Vec<Blank> {
        let spent = self.viewer.money_shown.then_some(("wall-money-spent", 25));
        let wide = if spent.is_some() { 25 } else { 33 };
        let rows = [("wall-bags-left", wide), ("wall-last-fed", wide), ("wall-weighed", wide)];
        let remarks = [("wall-remarks", 100), ("wall-no-label", 100), ("wall-no-label", 100)];
        self.blanks(&rows.into_iter().chain(spent).chain(remarks).collect::<Vec<_>>())
    }

    fn wall_grid(&self, days: &[DoorDay]) -> DayGrid {
        let head = |day: &DoorDay| {
            let date = day.date.map(|date| self.weekday(date));
            (
                date.unwrap_or_else(|| self.words.plain("wall-date")),
                say!(self.words, "day-of-age", day = day.age.to_string()),
            )
        };
        let tags = |keys: &[&str]| keys.iter().map(|key| self.words.plain(key)).collect::<Vec<String>>();
        let row = |name: &str, fill: Fill, cell: &dyn Fn(&Expected) -> Option<String>| GridRow {
            label: self.words.plain(&format!("wall-row-{name}")),
            note: self.words.attribute(&format!("wall-row-{name}"), "note", &[]).unwrap_or_default(),
            fill,
            cells: days.iter().map(|day| day.expected.as_ref().and_then(cell).unwrap_or_default()).collect(),
            pictures: Vec::new(),
            pictured: 0,
        };
        let mut todo = row("todo", Fill::Read, &|_| None);
        todo.cells = days.iter().map(|day| self.todos(day)).collect();
        let mut feed = row("feed", Fill::Box, &|day| self.feed_expected(day));
        let mut water = row("water", Fill::Box, &|day| self.water_expected(day));
        // Of what the chicks find when they come the tables book nothing on their day.
        for (row, key, amount) in [
            (&mut feed, "wall-feed-first", (|day| day.feed_kg) as fn(&Expected) -> Option<f64>),
            (&mut water, "wall-water-first", |day| day.water_l),
        ] {
            let chick_day = days.iter().position(|day| day.age == 0);
            let amount = chick_day.and_then(|at| amount(days[at].expected.as_ref()?));
            if let Some(cell) = chick_day.and_then(|at| row.cells.get_mut(at)).filter(|cell| !cell.is_empty())
            {
                let is_booked = amount.is_some_and(|amount| amount > 0.0);
                *cell = match is_booked {
                    true => say!(self.words, key, amount = cell.clone()),
                    false => self.words.plain(&format!("{key}-none")),
                };
                // The next day then stands with what they had on the chick day: else the day after it looks like a fall.
                let next = row.cells.get_mut(chick_day.unwrap_or_default() + 1);
                if let Some(next) = next.filter(|next| !is_booked && !next.is_empty()) {
                    *next = say!(self.words, "wall-with-chick-day", amount = next.clone());
                }
            }
        }
        let mut deaths = row("deaths", Fill::Parts(tags(&["wall-morning", "wall-evening"])), &|day| {
            Some(say!(self.words, "wall-call", n = show::number(day.call_at, 0)))
        });
        for ((feed, deaths), day) in feed.cells.iter_mut().zip(&mut deaths.cells).zip(days) {
            self.add_last_time(feed, day.before.feed_kg.map(|kg| self.short(kg, Unit::Kilogram)));
            self.add_last_time(deaths, day.before.deaths.map(|birds| show::number(birds, 0)));
        }
        let mut warmth = row("warmth", Fill::Parts(tags(&["wall-warmest", "wall-coldest"])), &|day| {
            Some(say!(self.words, "wall-target", warmth = self.short(day.warmth_c?, Unit::Celsius)))
        });
        warmth.pictured = days.iter().filter(|day| day.is_brooding).count();
        if warmth.pictured > 0 {
            warmth.pictures = self.lying();
            warmth.note = self.words.plain("wall-warmth-and-spread");
        }
        // Where every day has its drawings, they are what is said of how the chicks lie.
        let look: &[&str] = match warmth.pictured == days.len() {
            true => &["wall-smell", "wall-litter", "wall-lamps"],
            false => &["wall-spread", "wall-smell", "wall-litter", "wall-lamps"],
        };
        DayGrid {
            corner: self.words.plain("wall-corner"),
            days: days.iter().map(head).collect(),
            rows: vec![
                todo,
                feed,
                water,
                warmth,
                deaths,
                row("look", Fill::Ticks(tags(look)), &|day| {
                    Some(say!(self.words, "wall-light", hours = self.short(day.light_h?, Unit::Hour)))
                }),
                row("curtain", Fill::Parts(tags(&["wall-curtain", "wall-initials"])), &|_| None),
            ],
            rest: match days.last().and_then(|last| Some((last.age, last.date?))) {
                Some((age, date)) if days.len() < door_sheet::DAYS as usize => {
                    say!(self.words, "wall-rest", day = self.weekday(date), age = age.to_string())
                }
                _ => String::new(),
            },
        }
    }

    /// How chicks can lie round the heat, from left to right as they are named.
    fn lying(&self) -> Vec<GridPicture> {
        let picture = |(spread, name): (Spread, &'static str)| GridPicture {
            name,
            svg: spread.draw(""),
            alternative: self.words.plain(&format!("choice-look-spread-{}", spread.word())),
        };
        let drawn = [
            (Spread::Even, "lying-even"),
            (Spread::UnderTheHeat, "lying-under"),
            (Spread::AwayFromTheHeat, "lying-away"),
            (Spread::ToOneSide, "lying-aside"),
        ];
        drawn.into_iter().map(picture).collect()
    }

    /// What the last batch had, behind what is expected.
    fn add_last_time(&self, cell: &mut String, had: Option<String>) {
        if let Some(had) = had {
            *cell = say!(self.words, "wall-last-time", expected = cell.clone(), had = had);
        }
    }

    fn short(&self, value: f64, unit: Unit) -> String {
        show::quantity(value, unit, 0, self.viewer)
    }

    /// Kilograms, and bags and tins where they are told.
    fn feed_expected(&self, day: &Expected) -> Option<String> {
        let kilograms = self.short(day.feed_kg?, Unit::Kilogram);
        let bags = day.feed_bags.map(|bags| {
            let shown = (bags * 10.0).round() / 10.0;
            say!(self.words, "wall-bags", n = show::short(bags, 1), count = shown)
        });
        let tins = day
            .feed_tins
            .map(|tins| say!(self.words, "wall-tins", n = show::number(tins, 0), count = tins.round()));
        Some([Some(kilograms), bags, tins].into_iter().flatten().collect::<Vec<_>>().join(", "))
    }

    /// Litres, and cans.
    fn water_expected(&self, day: &Expected) -> Option<String> {
        let litres = self.short(day.water_l?, Unit::Litre);
        let cans = day.water_cans.map(|cans| {
            let shown = (cans * 10.0).round() / 10.0;
            say!(self.words, "wall-cans", n = show::short(cans, 1), count = shown)
        });
        Some([Some(litres), cans].into_iter().flatten().collect::<Vec<_>>().join(", "))
    }

    fn todos(&self, day: &DoorDay) -> String {
        let weighed =
            day.before.weight_g.filter(|_| day.todo.iter().any(|one| matches!(one, Todo::Weigh { .. })));
        let last = weighed
            .map(|grams| say!(self.words, "todo-weighed-last-time", weight = self.short(grams, Unit::Gram)));
        day.todo.iter().map(|one| self.todo(one)).chain(last).collect::<Vec<_>>().join(" ")
    }

    fn todo(&self, todo: &Todo) -> String {
        let phase = |phase: &advice::store_room::Phase| self.words.plain(&format!("phase-{}", phase.name()));
        match todo {
            Todo::Guard(standing) => say!(self.words, "todo-guard", how = self.standing(standing)),
            Todo::Delivery { phase: feed, bags, size_kg } => {
                say!(
                    self.words,
                    "todo-delivery",
                    n = show::bags(*bags, *size_kg, self.viewer),
                    count = *bags,
                    feed = phase(feed)
                )
            }
            Todo::Mix { phase: feed, parts_of_four } => {
                say!(self.words, &format!("todo-mix-{parts_of_four}"), feed = phase(feed))
            }
            Todo::Boxes => self.words.plain("todo-boxes"),
            Todo::LargeBesideSmall => self.words.plain("todo-large-beside-small"),
            Todo::SmallOut => self.words.plain("todo-small-out"),
            Todo::Weigh { birds, target_g } => match birds.zip(*target_g) {
                Some((birds, target)) => say!(
                    self.words,
                    "todo-weigh",
                    birds = self.short(birds, Unit::Birds),
                    target = self.short(target, Unit::Gram),
                ),
                None => self.words.plain("todo-weigh-all"),
            },
            Todo::Sell { birds: Some(birds), are_last } => {
                let key = if *are_last { "todo-sell-last" } else { "todo-sell" };
                say!(self.words, key, birds = self.short(*birds, Unit::Birds))
            }
            Todo::Sell { birds: None, .. } => self.words.plain("todo-sell-some"),
            Todo::Job(name) => self.words.plain(&format!("todo-job-{name}")),
        }
    }

    /// Day of the week, day and month, short enough for a column.
    pub(super) fn weekday(&self, day: CivilDay) -> String {
        say!(
            self.words,
            "weekday-and-day",
            weekday = self.words.plain(&format!("weekday-{}", day.weekday())),
            day = day.day().to_string(),
            month = self.words.plain(&format!("month-short-{}", day.month())),
        )
    }
}
