//! Is something off? Every signal against what was expected, the fixed rules, and what to look at.

use advice::watch::{Level as State, Ruled, Told, Watch, Watched, WatchedDay, asked};

use quantity::DayOfAge;

use super::Page;
use super::lines::empty;
use crate::document::{Align, Block, Drawing, Level, Steps, Table};
use crate::scene::chart::{Band, Chart, ChartWords, Limit, Series, Stroke};
use crate::{by_day, say, show};

/// Signals with the names of their two drawings.
const DRAWN: [(&str, &str, &str); 13] = [
    ("deaths", "watch-deaths", "watch-deaths-memory"),
    ("losses", "watch-losses", "watch-losses-memory"),
    ("water", "watch-water", "watch-water-memory"),
    ("feed", "watch-feed", "watch-feed-memory"),
    ("water-to-feed", "watch-water-to-feed", "watch-water-to-feed-memory"),
    ("cold", "watch-cold", "watch-cold-memory"),
    ("warm", "watch-warm", "watch-warm-memory"),
    ("swing", "watch-swing", "watch-swing-memory"),
    ("humidity", "watch-humidity", "watch-humidity-memory"),
    ("weight", "watch-weight", "watch-weight-memory"),
    ("gain", "watch-gain", "watch-gain-memory"),
    ("unevenness", "watch-unevenness", "watch-unevenness-memory"),
    ("litter", "watch-litter", "watch-litter-memory"),
];

/// Signals and rules of which act means heat, and those that call for a veterinarian.
const OF_HEAT: [&str; 4] = ["warm", "swing", "heat-sudden", "heat-near-body"];
const NOT_FOR_THE_VET: [&str; 6] = ["cold", "humidity", "weight", "gain", "unevenness", "litter"];

/// Days back on which a missing day is told.
const MISSING_WITHIN_D: i32 = 7;

/// The name of a state.
pub(crate) fn state_name(state: Option<State>) -> &'static str {
    match state {
        None => "unknown",
        Some(State::Steady) => "steady",
        Some(State::Look) => "look",
        Some(State::Act) => "act",
    }
}

/// The latest of what stood out, as far as one sheet for an adviser has room.
const FOR_ADVISER: usize = 6;

impl Page<'_> {
    pub(super) fn watch(&self) -> Vec<Block> {
        let Some(watch) = Watch::of(self.walk) else { return vec![self.note("watch-waiting")] };
        let parts = [
            vec![self.watch_lead(&watch)],
            self.watch_cautions(&watch),
            self.watch_now(&watch),
            self.watch_history(&watch),
            vec![self.heading("watch-all"), Block::Table(self.signals_table(&watch))],
            self.uneven(),
            self.watch_drawn(&watch),
            vec![
                self.heading("watch-rules-heading"),
                Block::Table(self.rules_table(&watch)),
                self.note("watch-rules-note"),
            ],
            self.heat_ahead(),
            self.watch_how(),
        ];
        parts.into_iter().flatten().collect()
    }

    /// Hot hours that the plan's own hottest afternoon would bring now; nothing where it would bring none.
    fn heat_ahead(&self) -> Vec<Block> {
        let blocks = crate::air_day::tonight(self.walk)
            .map_or_else(Vec::new, |answered| crate::air_day::heat_in_short(&answered, self.viewer));
        let heading = (!blocks.is_empty()).then(|| self.heading("watch-heat-ahead"));
        heading.into_iter().chain(blocks).collect()
    }

    /// What belongs on the page of the day: how it stands, and what does not fit.
    pub(super) fn watch_of_today(&self) -> Vec<Block> {
        let Some(watch) = Watch::of(self.walk) else { return Vec::new() };
        let mut blocks = vec![self.watch_lead(&watch)];
        blocks.extend(self.watch_cautions(&watch));
        blocks.extend(self.not_fitting(&watch).map(Block::Steps));
        blocks
    }

    /// For an adviser: how it stands, and what stood out.
    pub(super) fn watch_for_adviser(&self) -> Vec<Block> {
        let Some(watch) = Watch::of(self.walk) else { return Vec::new() };
        let name = state_name(watch.state());
        let stands = Block::Paragraph(say!(
            self.words,
            "adviser-stands",
            state = self.words.plain(&format!("watch-state-{name}")),
            note = self.words.plain(&format!("watch-lead-{name}"))
        ));
        let told = watch.told();
        let latest = &told[told.len().saturating_sub(FOR_ADVISER)..];
        let table = (!latest.is_empty()).then(|| self.told_table(&watch, latest, "watch-history"));
        std::iter::once(stands).chain(table).collect()
    }

    fn watch_lead(&self, watch: &Watch) -> Block {
        let name = state_name(watch.state());
        Block::Lead {
            label: self.words.plain("watch-lead"),
            value: self.words.plain(&format!("watch-state-{name}")),
            note: self.words.plain(&format!("watch-lead-{name}")),
        }
    }

    /// What to do first where something asks to act.
    fn watch_cautions(&self, watch: &Watch) -> Vec<Block> {
        let signals =
            watch.signals.iter().filter(|signal| signal.state == Some(State::Act)).map(|signal| signal.name);
        let rules = watch.rules.iter().filter(|rule| rule.holds && asked(rule.call) == Some(State::Act));
        let acting: Vec<&str> = signals.chain(rules.map(|rule| rule.name)).collect();
        let is_for_the_vet = |name: &&str| !OF_HEAT.contains(name) && !NOT_FOR_THE_VET.contains(name);
        let mut blocks = Vec::new();
        if acting.iter().any(is_for_the_vet) {
            blocks.push(self.caution("watch-vet", Level::Danger, 5));
        }
        if acting.iter().any(|name| OF_HEAT.contains(name)) {
            blocks.push(self.caution("watch-heat", Level::Danger, 3));
        }
        blocks
    }

    fn watch_now(&self, watch: &Watch) -> Vec<Block> {
        let mut blocks = Vec::new();
        if let Some(steps) = self.not_fitting(watch) {
            blocks.extend([self.heading("watch-now"), Block::Steps(steps)]);
        }
        let since = (watch.age - MISSING_WITHIN_D).max(0);
        let is_missing = |day: &i32| self.walk.plan.outcome.on_day("growing.lost_by_day", *day).is_none();
        let missing = (since..watch.age).filter(is_missing).count();
        if missing > 0 {
            let count = missing as f64;
            blocks.push(Block::Note(say!(
                self.words,
                "watch-unwritten-days",
                count = count,
                days = missing.to_string()
            )));
        }
        blocks.push(self.caution("watch-any", Level::Danger, 2));
        blocks
    }

    /// Signals and rules that do not fit, with what to look at; `None` where all fit.
    fn not_fitting(&self, watch: &Watch) -> Option<Steps> {
        let is_off = |signal: &&Watched| signal.state > Some(State::Steady);
        let signals = watch.signals.iter().filter(is_off).filter_map(|signal| {
            Some((self.signal_line(signal)?, self.words.plain(&format!("watch-check-{}", signal.name))))
        });
        let rules = watch.rules.iter().filter(|rule| rule.holds).filter_map(|rule| {
            let state = asked(rule.call)?;
            let said = self.words.plain(&format!("watch-rule-{}", rule.name));
            Some((
                say!(self.words, "watch-line-rule", state = self.state(Some(state)), rule = said),
                String::new(),
            ))
        });
        let items: Vec<(String, String)> = rules.chain(signals).collect();
        (!items.is_empty()).then_some(Steps { ordered: false, ticks: false, items })
    }

    fn state(&self, state: Option<State>) -> String {
        self.words.plain(&format!("watch-state-{}", state_name(state)))
    }

    /// A signal in one line: how it stands and its last day.
    pub(crate) fn signal_line(&self, signal: &Watched) -> Option<String> {
        let last = signal.days.last()?;
        Some(say!(
            self.words,
            "watch-line",
            state = self.state(signal.state),
            signal = self.words.plain(&format!("watch-signal-{}", signal.name)),
            day = last.day.to_string(),
            seen = self.in_unit(signal, last.seen),
            low = self.in_unit(signal, last.low),
            high = self.in_unit(signal, last.high),
        ))
    }

    fn in_unit(&self, signal: &Watched, value: f64) -> String {
        let spec = advice::families::series_named(signal.seen);
        spec.map_or_else(String::new, |spec| show::quantity(value, spec.unit, spec.decimals, self.viewer))
    }

    fn watch_history(&self, watch: &Watch) -> Vec<Block> {
        let told = watch.told();
        let heading = self.heading("watch-history");
        if told.is_empty() {
            return vec![heading, self.note("watch-history-none")];
        }
        vec![heading, self.told_table(watch, &told, "watch-history-caption")]
    }

    fn told_table(&self, watch: &Watch, told: &[Told], caption: &str) -> Block {
        let date = |day: i32| Some(DayOfAge(day).date(self.walk.diary.placement?));
        let row = |told: &Told| {
            let day = date(told.day).map_or_else(String::new, |day| show::day_short(day, self.viewer));
            vec![told.day.to_string(), day, self.state(Some(told.level)), self.told(watch, told)]
        };
        let table = Table {
            caption: self.words.plain(caption),
            columns: self.columns(&[
                ("watch-column-day", Align::End),
                ("column-date", Align::Start),
                ("watch-column-state", Align::Start),
                ("watch-column-what", Align::Start),
            ]),
            rows: told.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        let days = told.iter().map(|told| date(told.day)).collect();
        Block::DayTable { table, days }
    }

    /// A rule by its sentence, a signal by what was seen on the day.
    fn told(&self, watch: &Watch, told: &Told) -> String {
        let Some(signal) = watch.signal(told.name) else {
            return self.words.plain(&format!("watch-rule-{}", told.name));
        };
        let name = self.words.plain(&format!("watch-signal-{}", signal.name));
        let Some(day) = signal.days.iter().find(|day| day.day == told.day) else { return name };
        say!(
            self.words,
            "watch-told",
            signal = name,
            seen = self.in_unit(signal, day.seen),
            low = self.in_unit(signal, day.low),
            high = self.in_unit(signal, day.high),
        )
    }

    fn columns(&self, columns: &[(&str, Align)]) -> Vec<(String, Align)> {
        columns.iter().map(|(key, align)| (self.words.plain(key), *align)).collect()
    }

    fn signals_table(&self, watch: &Watch) -> Table {
        let row = |signal: &Watched| {
            let last = |of: &dyn Fn(&WatchedDay) -> String| signal.days.last().map_or_else(String::new, of);
            vec![
                self.words.plain(&format!("watch-signal-{}", signal.name)),
                self.state(signal.state),
                last(&|day| day.day.to_string()),
                last(&|day| self.in_unit(signal, day.seen)),
                last(&|day| self.range_of(signal, day)),
                last(&|day| show::number(day.memory, 1)),
                say!(
                    self.words,
                    "watch-lines",
                    look = show::number(signal.look, 1),
                    act = show::number(signal.act, 1)
                ),
            ]
        };
        Table {
            caption: self.words.plain("watch-all-caption"),
            columns: self.columns(&[
                ("watch-column-signal", Align::Start),
                ("watch-column-state", Align::Start),
                ("watch-column-day", Align::End),
                ("watch-column-seen", Align::End),
                ("watch-column-likely", Align::End),
                ("watch-column-memory", Align::End),
                ("watch-column-lines", Align::End),
            ]),
            rows: watch.signals.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec![
                "watch.deaths_expected_by_day",
                "watch.water_expected_by_day",
                "watch.feed_expected_by_day",
                "watch.water_to_feed_expected_by_day",
                "watch.gain_expected_by_day",
            ],
        }
    }

    fn range_of(&self, signal: &Watched, day: &WatchedDay) -> String {
        say!(
            self.words,
            "watch-range",
            low = self.in_unit(signal, day.low),
            high = self.in_unit(signal, day.high)
        )
    }

    fn rules_table(&self, watch: &Watch) -> Table {
        let row = |rule: &Ruled| {
            let days: Vec<String> = rule.days.iter().map(ToString::to_string).collect();
            let held = match days.is_empty() {
                true => self.words.plain("watch-held-never"),
                false => say!(self.words, "watch-held-on", days = days.join(", ")),
            };
            let asks = asked(rule.call).map_or("note", |state| state_name(Some(state)));
            vec![
                self.words.plain(&format!("watch-rule-{}", rule.name)),
                self.words.plain(&format!("watch-ask-{asks}")),
                held,
            ]
        };
        Table {
            caption: self.words.plain("watch-rules-caption"),
            columns: self.columns(&[
                ("watch-column-rule", Align::Start),
                ("watch-column-asks", Align::Start),
                ("watch-column-held", Align::Start),
            ]),
            rows: watch.rules.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    /// Every signal drawn: first those that do not fit, the others folded away.
    fn watch_drawn(&self, watch: &Watch) -> Vec<Block> {
        let drawn = |signal: &Watched| {
            let names = DRAWN.iter().find(|(name, ..)| *name == signal.name)?;
            let last = signal.days.last()?;
            let alternative = self.signal_alternative(signal, last);
            let drawings = [
                self.draw_signal(signal, names.1, &alternative),
                self.draw_memory(signal, names.2, &alternative),
            ];
            let title = self.words.plain(&format!("watch-signal-{}", signal.name));
            let is_off = signal.state > Some(State::Steady);
            let blocks: Vec<Block> = drawings.into_iter().map(Block::Drawing).collect();
            Some((is_off, Block::Fold { title, blocks }))
        };
        let (off, fitting): (Vec<_>, Vec<_>) =
            watch.signals.iter().filter_map(drawn).partition(|(is_off, _)| *is_off);
        let open = off.into_iter().flat_map(|(_, fold)| match fold {
            Block::Fold { blocks, .. } => blocks,
            block => vec![block],
        });
        let blocks = open.chain(fitting.into_iter().map(|(_, fold)| fold));
        std::iter::once(self.heading("watch-drawn")).chain(blocks).collect()
    }

    fn signal_alternative(&self, signal: &Watched, last: &WatchedDay) -> String {
        let by_memory = |one: &&WatchedDay, other: &&WatchedDay| one.memory.total_cmp(&other.memory);
        let most = signal.days.iter().max_by(by_memory).unwrap_or(last);
        say!(
            self.words,
            "watch-alternative",
            signal = self.words.plain(&format!("watch-signal-{}", signal.name)),
            count = signal.days.len().to_string(),
            day = last.day.to_string(),
            seen = self.in_unit(signal, last.seen),
            low = self.in_unit(signal, last.low),
            high = self.in_unit(signal, last.high),
            most = show::number(most.memory, 1),
            most_day = most.day.to_string(),
        )
    }

    fn draw_signal(&self, signal: &Watched, name: &'static str, alternative: &str) -> Drawing {
        let label = self.words.plain(&format!("watch-signal-{}", signal.name));
        let points = |of: fn(&WatchedDay) -> f64| {
            signal.days.iter().map(|day| [f64::from(day.day), of(day)]).collect::<Vec<[f64; 2]>>()
        };
        let band = signal.days.iter().map(|day| [f64::from(day.day), day.low, day.high]).collect();
        let chart = Chart {
            series: vec![Series {
                label: label.clone(),
                stroke: Stroke::Dots,
                stepped: false,
                points: points(|day| day.seen),
            }],
            band: Some(Band { label: self.words.plain("watch-likely-band"), points: band }),
            ..Chart::default()
        };
        let unit = advice::families::series_named(signal.seen).map(|spec| spec.unit);
        let up = unit.map_or_else(|| label.clone(), |unit| by_day::axis(&label, unit, self.viewer));
        self.drawing(name, &chart, up, "drawing-watch-caption", &label, alternative)
    }

    fn draw_memory(&self, signal: &Watched, name: &'static str, alternative: &str) -> Drawing {
        let label = self.words.plain(&format!("watch-signal-{}", signal.name));
        let ends = signal.days.first().zip(signal.days.last());
        let across = ends.map(|(first, last)| [first, last].map(|day| [f64::from(day.day), signal.look]));
        let memory = signal.days.iter().map(|day| [f64::from(day.day), day.memory]).collect();
        let line = |key: &str, stroke, points| Series {
            label: self.words.plain(key),
            stroke,
            stepped: false,
            points,
        };
        let chart = Chart {
            series: vec![
                line("watch-memory-axis", Stroke::Solid, memory),
                line("watch-look-line", Stroke::Dashed, across.into_iter().flatten().collect()),
            ],
            limit: Some(Limit { label: self.words.plain("watch-act-line"), value: signal.act }),
            from_zero: true,
            ..Chart::default()
        };
        let up = self.words.plain("watch-memory-axis");
        self.drawing(name, &chart, up, "drawing-watch-memory-caption", &label, alternative)
    }

    fn drawing(
        &self,
        name: &'static str,
        chart: &Chart,
        up: String,
        caption: &str,
        signal: &str,
        alternative: &str,
    ) -> Drawing {
        let across = self.words.plain("drawing-days");
        let words = ChartWords { up, across, alternative: alternative.to_owned() };
        Drawing {
            name,
            svg: chart.draw_with(&words, None),
            caption: self.words.say(caption, &[("signal", signal.to_owned().into())]),
            alternative: alternative.to_owned(),
            data: empty(),
            width_percent: 48,
        }
    }

    fn watch_how(&self) -> Vec<Block> {
        let paragraphs =
            (1..=4).map(|at| Block::Paragraph(self.words.plain(&format!("watch-how-{at}")))).collect();
        vec![Block::Fold { title: self.words.plain("watch-how"), blocks: paragraphs }]
    }
}
