//! How is the sprayer mixed?

use super::*;

impl Shown<'_> {
    pub(super) fn disinfectant(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-mix")];
        let lead = self.mix_lead();
        if lead.is_empty() {
            blocks.push(self.waiting("waiting-mix", &waiting::MIX));
            return blocks;
        }
        blocks.extend(lead);
        blocks.push(Block::Caution(self.caution("disinfectant", Level::Danger, 7)));
        blocks.extend(self.findings(&["disinfectant", "house"]));
        blocks.extend(self.mix_drawing());
        blocks.extend(meaning(&self.plan.answers, self.viewer).map(Block::Note));
        let rows = self.rows(&[
            "disinfectant.product_per_load",
            "disinfectant.product_other_meaning",
            "disinfectant.measures_per_load",
            "disinfectant.loads",
            "disinfectant.full_loads",
            "disinfectant.last_load",
            "disinfectant.product_last_load",
            "disinfectant.solution",
            "disinfectant.product",
            "disinfectant.to_buy",
            "disinfectant.strength",
            "disinfectant.true_ratio",
            "disinfectant.times_label",
            "disinfectant.extra_cost",
            "disinfectant.cost",
            "disinfectant.soak_product",
            "disinfectant.drying",
            "disinfectant.drying_rate",
            "disinfectant.drying_wet_bulb",
            "disinfectant.area",
            "disinfectant.floor_area",
            "disinfectant.wall_area",
            "disinfectant.half_wall_area",
            "disinfectant.curtain_area",
            "disinfectant.gable_area",
            "disinfectant.roof_area",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks.push(Block::Note(self.words.plain("areas-convention")));
        blocks.extend(self.overdoses().map(Block::Table));
        blocks.extend(self.order_of_work(3));
        blocks
    }

    pub(super) fn mix_lead(&self) -> Vec<Block> {
        let Some(dose) = self.value("disinfectant.product_per_load") else { return Vec::new() };
        let Some(tank) = self.plan.answers.number("disinfectant.sprayer_l") else { return Vec::new() };
        let tank = show::quantity_short(tank, Unit::Litre, self.viewer);
        let mut lead = vec![Block::Lead {
            label: self.words.plain("mix-lead-label"),
            value: say!(self.words, "mix-lead", dose = dose, tank = tank),
            note: self.in_own_measure().unwrap_or_default(),
        }];
        let (loads, solution) = (self.value("disinfectant.loads"), self.value("disinfectant.solution"));
        if let Some((loads, solution)) = loads.zip(solution) {
            let to_buy = self.value("disinfectant.to_buy").unwrap_or_default();
            let has_tub = self.number("disinfectant.soak_product").is_some();
            let key = if has_tub { "mix-lead-note-tub" } else { "mix-lead-note" };
            let text = say!(
                self.words,
                key,
                count = self.number("disinfectant.loads").unwrap_or_default(),
                loads = loads,
                solution = solution,
                buy = to_buy,
            );
            lead.push(Block::Paragraph(text));
        }
        lead
    }

    /// The dose of a full tank and of half a tank in the grower's own measure.
    fn in_own_measure(&self) -> Option<String> {
        let full = self.number("disinfectant.measures_per_load")?;
        let holds = self.plan.answers.number("disinfectant.measure_ml")?;
        let name = self.plan.answers.text("disinfectant.measure_name").filter(|name| !name.is_empty());
        let name = name.map_or_else(|| self.words.plain("own-measure"), str::to_owned);
        Some(say!(
            self.words,
            "in-own-measure",
            full = show::short(full, 1),
            half = show::short(full / 2.0, 1),
            name = name,
            holds = show::quantity_short(holds, Unit::Millilitre, self.viewer),
        ))
    }

    pub(super) fn mix_drawing(&self) -> Option<Block> {
        let tank_l = self.plan.answers.number("disinfectant.sprayer_l")?;
        let (full, last_l) =
            (self.number("disinfectant.full_loads")?, self.number("disinfectant.last_load")?);
        let litres = |litres| show::quantity(litres, Unit::Litre, 1, self.viewer);
        let dose = self.value("disinfectant.product_per_load")?;
        let last_dose = self.value("disinfectant.product_last_load")?;
        let alternative = say!(
            self.words,
            "drawing-tankfuls",
            full = show::number(full, 0),
            tank = litres(tank_l),
            dose = &dose,
            last = litres(last_l),
            last_dose = &last_dose,
        );
        let words = TankfulWords {
            full: [
                say!(self.words, "tanks-full", count = full, n = show::number(full, 0)),
                litres(tank_l),
                dose,
            ],
            last: [self.words.plain("tank-last"), litres(last_l), last_dose],
            alternative: alternative.clone(),
        };
        let drawing = Tankfuls { tank_l, last_l, any_full: full > 0.0 }.draw(&words);
        Some(Block::Drawing(Drawing {
            name: "tankfuls",
            svg: drawing,
            caption: self.words.plain("drawing-tankfuls-caption"),
            alternative,
            data: self.drawing_data(&[
                "disinfectant.full_loads",
                "disinfectant.product_per_load",
                "disinfectant.last_load",
                "disinfectant.product_last_load",
            ]),
            width_percent: 55,
        }))
    }

    pub(super) fn overdoses(&self) -> Option<Table> {
        let pours = &self.plan.overdoses;
        let with_cost = pours.iter().all(|pour| pour.extra_cost.is_some());
        let mut columns = vec!["column-poured", "column-truly", "column-times"];
        if with_cost {
            columns.push("column-wasted");
        }
        let rows = pours
            .iter()
            .map(|pour| {
                let mut row = vec![
                    show::quantity(pour.poured_ml, Unit::Millilitre, 0, self.viewer),
                    say!(self.words, "ratio-of", parts = show::number(pour.true_ratio, 0)),
                    say!(self.words, "times-label", times = show::short(pour.times_label, 2)),
                ];
                row.extend(pour.extra_cost.filter(|_| with_cost).map(|cost| show::money(cost, self.viewer)));
                row
            })
            .collect();
        (!pours.is_empty()).then(|| Table {
            caption: self.words.plain("overdose-caption"),
            columns: self.columns(&columns),
            rows,
            emphasis: Vec::new(),
            explained_by: vec![
                "disinfectant.true_ratio",
                "disinfectant.times_label",
                "disinfectant.extra_cost",
            ],
        })
    }
}
