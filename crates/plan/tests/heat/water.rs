//! Water, steam and pouring.

use measure::quantity::{
    Length, ThermodynamicTemperature,
    units::{degree_celsius, meter},
};
use plan::heat::water::{Pour, air_for, boils_at, boils_under, moist_steam, pressure_at, vapour_pressure};
use uom::si::thermodynamic_temperature::kelvin;

use crate::{near, rows};

fn high(metres: f64) -> Length {
    Length::new::<meter>(metres)
}

#[test]
fn verification_values_of_the_saturation_line() {
    for row in rows(include_str!("../cases/heat/saturation.txt")) {
        near("temperature", boils_under(row[0] * 1e6).unwrap().get::<kelvin>(), row[1], 6e-7);
    }
    for row in rows(include_str!("../cases/heat/vapour.txt")) {
        let pressure = vapour_pressure(ThermodynamicTemperature::new::<kelvin>(row[0])).unwrap() / 1e6;
        near("pressure", pressure / row[1], 1.0, 3e-9);
    }
    assert_eq!(boils_under(500.0), None, "below the triple point");
    assert_eq!(boils_under(3e7), None, "above the critical point");
}

#[test]
fn boiling_by_height() {
    for row in rows(include_str!("../cases/heat/altitude.txt")) {
        near("pressure", pressure_at(high(row[0])).unwrap(), row[1], 0.01);
        near("boils at", boils_at(high(row[0])).unwrap().get::<degree_celsius>(), row[2], 6e-5);
    }
    assert_eq!(boils_at(high(12_000.0)), None, "beyond the lowest layer");
}

#[test]
fn steam_mixed_with_air() {
    for row in rows(include_str!("../cases/heat/steam.txt")) {
        let dew = moist_steam(1.0 - row[0], high(0.0)).unwrap();
        near(&format!("{} of steam", row[0]), dew.get::<degree_celsius>(), row[1], 0.5);
        near("and back", air_for(dew, high(0.0)).unwrap(), 1.0 - row[0], 1e-9);
    }
    assert_eq!(air_for(ThermodynamicTemperature::new::<degree_celsius>(110.0), high(0.0)), None);
}

/// Common practice, measured once: 1.7 l at 97 °C over 160 g of wet fibre end near 88 °C.
#[test]
fn a_poured_kettle() {
    let pour = Pour { water: 1.7, heat: 97.0, fibre: 0.16, specific_heat: 1300.0, carries: 1.0, cool: 20.0 };
    near("mixed", pour.mixed(), 88.0, 1.0);
    // No fibre, no loss; as much cold water as hot, half-way.
    near("no fibre", Pour { fibre: 0.0, ..pour }.mixed(), 97.0, 1e-12);
    let halves = Pour { water: 1.0, heat: 80.0, fibre: 1.0, specific_heat: 0.0, carries: 1.0, cool: 20.0 };
    near("halves", halves.mixed(), 50.0, 1e-12);
}
