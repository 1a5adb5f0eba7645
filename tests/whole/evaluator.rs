//! A small evaluator of formula texts. It shares no code with the models: numbers come from the text, the inputs and,
//! for table functions, from the CSV files read here afresh.

use std::collections::HashMap;

use crate::functions;

/// A list that a formula works over, with its symbol.
pub type List<'a> = (&'a str, &'a [f64]);

/// Works a formula out over its inputs.
pub fn evaluate(formula: &str, inputs: &HashMap<&str, f64>) -> Result<f64, String> {
    evaluate_over(formula, inputs, &[])
}

/// Works a formula out over its inputs and lists, which are equally long.
pub fn evaluate_over(formula: &str, inputs: &HashMap<&str, f64>, lists: &[List]) -> Result<f64, String> {
    let tokens = tokens(formula)?;
    let mut parser = Parser { tokens: &tokens, at: 0, inputs: inputs.clone(), lists };
    let value = parser.sum()?;
    if parser.at == tokens.len() { Ok(value) } else { Err(format!("left over: {:?}", &tokens[parser.at..])) }
}

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Number(f64),
    Name(String),
    Sign(char),
}

fn tokens(formula: &str) -> Result<Vec<Token>, String> {
    let mut tokens = Vec::new();
    let mut rest = formula.trim_start();
    while let Some(first) = rest.chars().next() {
        let length = |accept: fn(char) -> bool| rest.find(|c| !accept(c)).unwrap_or(rest.len());
        let taken = if first.is_ascii_digit() {
            let end = length(|c| c.is_ascii_digit() || c == '.');
            tokens.push(Token::Number(rest[..end].parse().map_err(|_| rest[..end].to_owned())?));
            end
        } else if first.is_ascii_alphabetic() {
            let end = length(|c| c.is_ascii_alphanumeric() || c == '_');
            tokens.push(Token::Name(rest[..end].to_owned()));
            end
        } else if "+-*/^(),".contains(first) {
            tokens.push(Token::Sign(first));
            1
        } else {
            return Err(format!("cannot read {rest:?}"));
        };
        rest = rest[taken..].trim_start();
    }
    Ok(tokens)
}

struct Parser<'a> {
    tokens: &'a [Token],
    at: usize,
    inputs: HashMap<&'a str, f64>,
    lists: &'a [List<'a>],
}

impl<'a> Parser<'a> {
    fn takes(&mut self, sign: char) -> bool {
        let found = self.tokens.get(self.at) == Some(&Token::Sign(sign));
        self.at += usize::from(found);
        found
    }

    fn expects(&mut self, sign: char) -> Result<(), String> {
        if self.takes(sign) { Ok(()) } else { Err(format!("{sign} wanted at token {}", self.at)) }
    }

    fn sum(&mut self) -> Result<f64, String> {
        let mut value = self.product()?;
        loop {
            if self.takes('+') {
                value += self.product()?;
            } else if self.takes('-') {
                value -= self.product()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn product(&mut self) -> Result<f64, String> {
        let mut value = self.power()?;
        loop {
            if self.takes('*') {
                value *= self.power()?;
            } else if self.takes('/') {
                value /= self.power()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn power(&mut self) -> Result<f64, String> {
        let base = self.atom()?;
        if self.takes('^') { Ok(base.powf(self.power()?)) } else { Ok(base) }
    }

    fn atom(&mut self) -> Result<f64, String> {
        if self.takes('(') {
            let value = self.sum()?;
            self.expects(')')?;
            return Ok(value);
        }
        let token = self.tokens.get(self.at).cloned().ok_or("ends too early")?;
        self.at += 1;
        match token {
            Token::Number(number) => Ok(number),
            Token::Sign(sign) => Err(format!("{sign} out of place")),
            Token::Name(name) if self.takes('(') => self.call(&name),
            Token::Name(name) if name == "pi" => Ok(std::f64::consts::PI),
            Token::Name(name) => {
                self.inputs.get(name.as_str()).copied().ok_or_else(|| format!("{name} is no input"))
            }
        }
    }

    fn call(&mut self, name: &str) -> Result<f64, String> {
        match name {
            "least" | "last" => return self.search(name),
            "sum" => return self.sum_over_list(),
            "count" | "mean" | "count_between" | "lasts" => return self.of_list(name),
            _ => {}
        }
        if name == "add" {
            return self.add_up();
        }
        if name == "root" {
            return self.root();
        }
        let mut arguments = vec![self.sum()?];
        while self.takes(',') {
            arguments.push(self.sum()?);
        }
        self.expects(')')?;
        let x = arguments[0];
        Ok(match (name, arguments.len()) {
            ("sqrt", 1) if x < 0.0 => return Err(format!("no root of {x}")),
            ("sqrt", 1) => x.sqrt(),
            ("tan", 1) => x.tan(),
            ("sin", 1) => x.sin(),
            ("cos", 1) => x.cos(),
            ("acos", 1) => x.acos(),
            ("phi", 1) => functions::share_below(x),
            ("t95", 1) => functions::student_95(x)?,
            ("saturation_pressure", 1) => functions::saturation_pressure(x),
            ("declination", 1) => functions::declination(x),
            // Whole things: a hair of rounding in the arithmetic is no missing bird (one part in a thousand million).
            ("floor", 1) => {
                if hair_of(x) {
                    x.round()
                } else {
                    x.floor()
                }
            }
            ("ceil", 1) => {
                if hair_of(x) {
                    x.round()
                } else {
                    x.ceil()
                }
            }
            ("round", 1) => x.round(),
            ("min", 2) => x.min(arguments[1]),
            ("max", 2) => x.max(arguments[1]),
            ("at_least", 2) => f64::from(u8::from(x >= arguments[1])),
            ("daylength", 2) => daylength(x, arguments[1]),
            ("growth_fast", 1) => growth("growth_fast", None, x)?,
            ("growth_slow", 1) => growth("growth_slow", Some("S1_slow63"), x)?,
            ("growth_open_house", 1) => growth("growth_tropical", Some("T_curve"), x)?,
            ("brooding_temperature", 2) => brooding_temperature(x, arguments[1])?,
            (other, count) => return Err(format!("no function {other} of {count}")),
        })
    }

    /// `sum(e)`: e for each place of the lists in turn, added. One sum can stand inside another.
    fn sum_over_list(&mut self) -> Result<f64, String> {
        let places = self.lists.first().ok_or("sum wants a list")?.1.len();
        let (start, outside) = (self.at, self.inputs.clone());
        let mut total = 0.0;
        for place in 0..places {
            self.at = start;
            self.inputs.extend(self.lists.iter().map(|(symbol, list)| (*symbol, list[place])));
            total += self.sum()?;
        }
        self.inputs = outside;
        self.expects(')')?;
        Ok(total)
    }

    /// `count(w)`, `mean(w)`, `count_between(w, low, high)` and `lasts(w, amount)`.
    fn of_list(&mut self, name: &str) -> Result<f64, String> {
        let token = self.tokens.get(self.at);
        let named = |(symbol, _): &&List| token == Some(&Token::Name((*symbol).to_owned()));
        let (_, list) = self.lists.iter().find(named).ok_or_else(|| format!("{name} wants a list first"))?;
        self.at += 1;
        let mut limits = Vec::new();
        while self.takes(',') {
            limits.push(self.sum()?);
        }
        self.expects(')')?;
        let count = list.len() as f64;
        match (name, limits.as_slice()) {
            ("count", []) => Ok(count),
            ("mean", []) => Ok(list.iter().sum::<f64>() / count),
            ("count_between", &[low, high]) => {
                let inside = |x: &&f64| {
                    (**x > low || hair_of_equal(**x, low)) && (**x < high || hair_of_equal(**x, high))
                };
                Ok(list.iter().filter(inside).count() as f64)
            }
            ("lasts", &[amount]) => {
                // The days whose own share and all before it are covered, and the part that is of the next.
                let eaten = |days: usize| list[..days].iter().sum::<f64>();
                let whole = (0..=list.len()).take_while(|days| eaten(*days) <= amount.max(0.0) + 1e-9).last();
                let whole = whole.unwrap_or(0);
                let rest = (amount.max(0.0) - eaten(whole)).max(0.0);
                Ok(whole as f64 + list.get(whole).map_or(0.0, |next| rest / next))
            }
            _ => Err(format!("no function {name} with {} limits", limits.len())),
        }
    }

    /// `least(n, from, e)` and `last(d, from, to, e)`.
    fn search(&mut self, name: &str) -> Result<f64, String> {
        let Some(Token::Name(variable)) = self.tokens.get(self.at).cloned() else {
            return Err(format!("{name} wants a name first"));
        };
        self.at += 1;
        self.expects(',')?;
        let from = self.sum()?;
        let to = if name == "last" {
            self.expects(',')?;
            self.sum()?
        } else {
            f64::INFINITY
        };
        self.expects(',')?;
        let start = self.at;
        let symbol: &'a str = self.symbol(&variable);
        let found = match name {
            "least" => self.least(start, symbol, from)?,
            _ => self.last_of_run(start, symbol, from, to)?,
        };
        self.expects(')')?;
        self.inputs.remove(symbol);
        found.ok_or_else(|| format!("{name} found none"))
    }

    /// Whether the expression at `start` is not negative with `n` put in.
    fn holds(&mut self, start: usize, symbol: &'a str, n: f64) -> Result<bool, String> {
        self.at = start;
        self.inputs.insert(symbol, n);
        Ok(self.sum()? >= -1e-9)
    }

    /// The least n from `from` up to a million at which the expression holds. Formulas use it where more is never worse, so
    /// that doubling and halving find it; beyond where the expression has a value it counts as holding.
    fn least(&mut self, start: usize, symbol: &'a str, from: f64) -> Result<Option<f64>, String> {
        const MOST: f64 = 1e6;
        let (mut low, mut high) = (from, from);
        let mut is_good = self.holds(start, symbol, from)?;
        while !is_good {
            if high >= MOST {
                return Ok(None);
            }
            low = high + 1.0;
            high = (high * 2.0).min(MOST);
            is_good = self.holds(start, symbol, high).unwrap_or(true);
        }
        while low < high {
            let middle = ((low + high) / 2.0).floor();
            if self.holds(start, symbol, middle).unwrap_or(true) { high = middle } else { low = middle + 1.0 }
        }
        // Evaluated last, so that what follows in the text is read from behind it.
        Ok(self.holds(start, symbol, high)?.then_some(high))
    }

    fn last_of_run(
        &mut self,
        start: usize,
        symbol: &'a str,
        from: f64,
        to: f64,
    ) -> Result<Option<f64>, String> {
        let (mut found, mut n) = (None, from);
        while n <= to && self.holds(start, symbol, n)? {
            found = Some(n);
            n += 1.0;
        }
        Ok(found)
    }

    /// `sum(d, from, to, e)`: `e` over every whole d of the span.
    fn add_up(&mut self) -> Result<f64, String> {
        let Some(Token::Name(variable)) = self.tokens.get(self.at).cloned() else {
            return Err("sum wants a name first".to_owned());
        };
        self.at += 1;
        self.expects(',')?;
        let from = self.sum()?;
        self.expects(',')?;
        let to = self.sum()?;
        self.expects(',')?;
        let start = self.at;
        let symbol: &'a str = self.symbol(&variable);
        let (mut total, mut d) = (0.0, from);
        while d <= to {
            self.at = start;
            self.inputs.insert(symbol, d);
            total += self.sum()?;
            d += 1.0;
        }
        self.expects(')')?;
        self.inputs.remove(symbol);
        Ok(total)
    }

    /// `root(x, low, high, e)`: where a rising `e` passes zero, by halving; an end where it does not.
    fn root(&mut self) -> Result<f64, String> {
        let Some(Token::Name(variable)) = self.tokens.get(self.at).cloned() else {
            return Err("root wants a name first".to_owned());
        };
        self.at += 1;
        self.expects(',')?;
        let mut low = self.sum()?;
        self.expects(',')?;
        let mut high = self.sum()?;
        self.expects(',')?;
        let start = self.at;
        let symbol: &'a str = self.symbol(&variable);
        for _ in 0..80 {
            let middle = f64::midpoint(low, high);
            self.at = start;
            self.inputs.insert(symbol, middle);
            if self.sum()? < 0.0 { low = middle } else { high = middle }
        }
        self.expects(')')?;
        self.inputs.remove(symbol);
        Ok(high)
    }

    fn symbol(&self, name: &str) -> &'a str {
        self.tokens
            .iter()
            .find_map(|token| match token {
                Token::Name(known) if known == name => Some(known.as_str()),
                _ => None,
            })
            .unwrap_or_default()
    }
}

fn hair_of_equal(x: f64, y: f64) -> bool {
    (x - y).abs() <= 1e-9 * y.abs()
}

fn hair_of(x: f64) -> bool {
    (x - x.round()).abs() <= 1e-9 * x.round().abs().max(1.0)
}

/// Hours from sunrise to sunset, upper limb, on a day counted from 1970-01-01, by Spencer's declination: written out here
/// from the paper's series, with the day of the year counted by hand.
fn daylength(latitude: f64, day: f64) -> f64 {
    let (mut year, mut left) = (1970, day as i64);
    let days_in = |year: i64| if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) { 366 } else { 365 };
    while left >= days_in(year) {
        left -= days_in(year);
        year += 1;
    }
    let b = 2.0 * std::f64::consts::PI * left as f64 / 365.0;
    let sine = [(1.0, 0.070257), (2.0, 0.000907), (3.0, 0.00148)];
    let cosine = [(1.0, -0.399912), (2.0, -0.006758), (3.0, -0.002697)];
    let part = |terms: [(f64, f64); 3], of: fn(f64) -> f64| -> f64 {
        terms.iter().map(|(n, a)| a * of(n * b)).sum()
    };
    let declination = 0.006918 + part(sine, f64::sin) + part(cosine, f64::cos);
    let latitude = latitude.to_radians();
    let cosine = (-(0.8333f64.to_radians()).sin() - latitude.sin() * declination.sin())
        / (latitude.cos() * declination.cos());
    24.0 / std::f64::consts::PI * cosine.clamp(-1.0, 1.0).acos()
}

/// Body weight on a day, read from the table file by hand: comment lines, one header, plain commas before the weight.
fn growth(table: &str, key: Option<&str>, day: f64) -> Result<f64, String> {
    let path = format!("{}/../crates/reference/tables/{table}.csv", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).map_err(|error| error.to_string())?;
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let columns: Vec<&str> = lines.next().unwrap_or_default().split(',').collect();
    let at = |name: &str| columns.iter().position(|column| *column == name).ok_or(name.to_owned());
    let (age, weight) = (at("age_d")?, at("body_weight_g")?);
    for line in lines.filter(|line| key.is_none_or(|key| line.starts_with(key))) {
        // A quoted cell with a comma stands before the age in the tropical table; it counts as one.
        let unquoted = line.replace("\"open-sided tropical, modelled\"", "open");
        let cells: Vec<&str> = unquoted.split(',').collect();
        if cells[age].parse() == Ok(day) {
            return cells[weight].parse().map_err(|_| cells[weight].to_owned());
        }
    }
    Err(format!("{table} has no day {day}"))
}

/// The temperature chicks want, from the rows of guide B read by hand: over humidity first, then over age.
fn brooding_temperature(age: f64, humidity: f64) -> Result<f64, String> {
    let path = format!("{}/../crates/reference/tables/temperature.csv", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).map_err(|error| error.to_string())?;
    let mut rows: Vec<[f64; 3]> = Vec::new();
    for line in text.lines().filter(|line| line.starts_with("B,")) {
        let cells: Vec<f64> = line.split(',').skip(1).take(3).filter_map(|cell| cell.parse().ok()).collect();
        rows.push(cells.try_into().map_err(|_| line.to_owned())?);
    }
    let (age, humidity) = (age.clamp(0.0, 27.0), humidity.clamp(40.0, 70.0));
    let corner = |age: f64, humidity: f64| {
        rows.iter().find(|row| row[0] == age && row[2] == humidity).map(|row| row[1]).ok_or("no such corner")
    };
    let (day, column) = ((age / 3.0).floor().min(8.0) * 3.0, (humidity / 10.0).floor().min(6.0) * 10.0);
    let (along, across) = ((age - day) / 3.0, (humidity - column) / 10.0);
    let young = corner(day, column)? * (1.0 - across) + corner(day, column + 10.0)? * across;
    let old = corner(day + 3.0, column)? * (1.0 - across) + corner(day + 3.0, column + 10.0)? * across;
    Ok(young * (1.0 - along) + old * along)
}

#[test]
fn it_reads_what_a_blackboard_would() {
    let inputs = HashMap::from([("a", 3.0), ("b", 4.0)]);
    for (formula, value) in [
        ("sqrt(a ^ 2 + b ^ 2)", 5.0),
        ("a - b - 1", -2.0),
        ("2 ^ a ^ 2", 512.0),
        ("ceil(10 / a) + floor(10 / a)", 7.0),
        ("least(n, 1, n * n - 10)", 4.0),
        ("last(d, 0, 42, b * b - d)", 16.0),
        ("growth_fast(42)", 2990.0),
        ("growth_open_house(42)", 2035.0),
        ("add(d, 1, b, d * d)", 30.0),
        ("brooding_temperature(21, 70)", 21.3),
        ("cos(0) + acos(1)", 1.0),
        ("root(x, 0, b, x * a - 6)", 2.0),
    ] {
        assert_eq!(evaluate(formula, &inputs), Ok(value), "{formula}");
    }
    let lists = [("w", [1.0, 2.0, 3.0, 6.0].as_slice()), ("n", [2.0, 1.0, 1.0, 1.0].as_slice())];
    for (formula, value) in [
        ("count(w) + mean(w)", 7.0),
        ("sum(w)", 12.0),
        ("sum((w - mean(w)) ^ 2) / count(w)", 3.5),
        ("sum(n * w) / sum(n)", 2.6),
        ("sum((w - sum(w) / count(w)) ^ 2 * n)", 18.0),
        ("count_between(w, 2, a) / count(w)", 0.5),
    ] {
        assert_eq!(evaluate_over(formula, &inputs, &lists), Ok(value), "{formula}");
    }
    for wrong in ["sum(w) + w", "count(a)", "count_between(w, 1)"] {
        assert!(evaluate_over(wrong, &inputs, &lists).is_err(), "{wrong}");
    }
    for wrong in ["a +", "(a", "c", "a b", "nope(a)", "a $ b", "sqrt(a - b)", "sum(a)", "t95(0)"] {
        assert!(evaluate(wrong, &inputs).is_err(), "{wrong}");
    }
}
