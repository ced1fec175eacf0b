//! A bath as work: what is planned for the plan of work, and what is recorded when it was done.
//!
//! What it is: the bath's figures in the fields of dye work. What it is not: an entry.

use measure::{
    decimal::fixed,
    prefs::Prefs,
    quantity::{ThermodynamicTemperature, units},
    typed::Typed,
    unit::Unit,
};
use record::{
    trade::dye::Class,
    wig::{
        work::{Work, dye},
        zone::Zones,
    },
    workshop::dyes::Dose,
};

use super::{bath::BathPlan, order::Way};

/// The fields of a dye, by its place in the bath.
const PLACES: [(&str, &str); 3] = [("stock", "dye_amount"), ("stock_2", "dye_amount_2"), ("stock_3", "dye_amount_3")];

fn amount(number: f64, unit: Unit) -> String {
    Typed::plain(number, unit).text().to_owned()
}

/// An amount of dye as it is typed.
pub fn dose_typed(dose: Dose) -> String {
    match dose {
        Dose::Weighed(_) => amount(dose.parts(), Unit::Gram),
        Dose::Measured(_) => amount(dose.parts(), Unit::Millilitre),
    }
}

impl BathPlan {
    /// Its figures as they are typed into the fields of dye work, held at a temperature.
    pub fn texts(&self, class: Class, held: ThermodynamicTemperature) -> Vec<(&'static str, String)> {
        let mut zones: Option<Zones> = None;
        for stretch in &self.stretches {
            let one = Zones::one(stretch.zone);
            zones = Some(zones.map_or(one, |zones| zones.and(stretch.zone)));
        }
        let dip = self.stretches.iter().any(|stretch| stretch.way != Way::Whole);
        let minutes = self.legs.iter().find(|leg| leg.part == super::curve::Part::Hold);
        let mut texts = vec![
            ("dye_class", class.name().to_owned()),
            ("dye_way", if dip { "dip" } else { "bath" }.to_owned()),
            ("temperature", amount(held.get::<units::degree_celsius>(), Unit::Celsius)),
            ("fibre_weight", amount(self.recipe.takes.get::<units::gram>(), Unit::Gram)),
            ("bath", amount(self.recipe.bath.get::<units::liter>(), Unit::Litre)),
            ("target_shade", self.wanted.shade().to_string()),
            ("zones", zones.map(|zones| zones.to_string()).unwrap_or_default()),
        ];
        if let Some(leg) = minutes {
            texts.push(("hold", amount(leg.time.get::<units::minute>(), Unit::Minute)));
        }
        if let Some(vinegar) = self.recipe.vinegar {
            texts.push(("vinegar", amount(vinegar.get::<units::milliliter>(), Unit::Millilitre)));
        }
        if let Some(dipping) = &self.dipping {
            texts.push(("water_line", format!("{} cm", fixed(dipping.water.get::<units::centimeter>(), 1))));
        }
        let depth: f64 = self.dyes.iter().map(|dye| dye.percent[1]).sum();
        if depth >= 0.01 {
            texts.push(("depth", amount(depth, Unit::Percent)));
        }
        let names: Vec<&str> = self.dyes.iter().map(|dye| dye.name.as_str()).filter(|name| !name.is_empty()).collect();
        texts.push(("dye_name", names.join(", ").chars().take(80).collect()));
        for ((stock, amounts), dye) in PLACES.into_iter().zip(&self.dyes) {
            if let Some(lot) = dye.lot {
                texts.push((stock, lot.to_string()));
                texts.push((amounts, dose_typed(dye.dose[1])));
            }
        }
        texts
    }

    /// The same as work, held as the person says or else as planned; nothing only where a figure is beyond a field's limits.
    pub fn work(&self, class: Class, said: Option<ThermodynamicTemperature>) -> Option<Work> {
        let texts = self.texts(class, said.unwrap_or(self.held));
        let pairs = texts.iter().map(|(name, text)| (*name, text.as_str()));
        Work::read(&dye::KIND, pairs, &Prefs::default()).ok()
    }
}
