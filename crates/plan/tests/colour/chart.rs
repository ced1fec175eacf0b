//! Three bands against a whole spectrum: mixing of the chart's colours, model against model.

use libm::sqrt;
use plan::colour::{Light, differ::ciede2000, dyed};

use super::{numbers, rows};

struct Chart {
    observer: [Vec<f64>; 3],
    light: Vec<f64>,
    patches: Vec<Vec<f64>>,
}

fn chart() -> Chart {
    let mut chart = Chart { observer: [vec![], vec![], vec![]], light: vec![], patches: vec![] };
    for row in rows(include_str!("../cases/colour/chart_spectra.txt")) {
        let figures = numbers(row[1]);
        assert_eq!(figures.len(), 36);
        match row[0] {
            "observer_x" => chart.observer[0] = figures,
            "observer_y" => chart.observer[1] = figures,
            "observer_z" => chart.observer[2] = figures,
            "illuminant_D65" => chart.light = figures,
            _ => chart.patches.push(figures),
        }
    }
    chart
}

impl Chart {
    /// Linear sRGB of a spectrum under D65 (matrix of IEC 61966-2-1), scaled so that a perfect white is white.
    fn seen(&self, spectrum: &[f64]) -> Light {
        let band = |observer: &[f64], spectrum: &dyn Fn(usize) -> f64| -> f64 {
            (0..36).map(|at| observer[at] * self.light[at] * spectrum(at)).sum()
        };
        let white = band(&self.observer[1], &|_| 1.0);
        let [x, y, z] = [0, 1, 2].map(|axis| band(&self.observer[axis], &|at| spectrum[at]) / white);
        Light(
            [
                3.2406 * x - 1.5372 * y - 0.4986 * z,
                -0.9689 * x + 1.8758 * y + 0.0415 * z,
                0.0557 * x - 0.2040 * y + 1.0570 * z,
            ]
            .map(|band| band.clamp(0.0, 1.0)),
        )
    }
}

fn ks(reflects: f64) -> f64 {
    let reflects = reflects.clamp(0.002, 0.998);
    (1.0 - reflects) * (1.0 - reflects) / (2.0 * reflects)
}

fn reflects(ks: f64) -> f64 {
    1.0 + ks - sqrt(ks * ks + 2.0 * ks)
}

/// Every patch as a dye on every other as a base, at a quarter, half and whole strength: the three-band model, which knows
/// only the two sRGB colours, against single-constant Kubelka-Munk on the whole spectra. Neither is dyed fibre.
#[test]
fn three_bands_stay_near_the_whole_spectrum() {
    let chart = chart();
    assert_eq!(chart.patches.len(), 24);
    let mut off = Vec::new();
    for base in &chart.patches {
        for dye in &chart.patches {
            if base == dye {
                continue;
            }
            for strength in [0.25, 0.5, 1.0] {
                let mixed: Vec<f64> =
                    base.iter().zip(dye).map(|(base, dye)| reflects(ks(*base) + strength * ks(*dye))).collect();
                let model = dyed(chart.seen(base), &[(chart.seen(dye).absorbs(), strength)]);
                off.push(ciede2000(chart.seen(&mixed), model));
            }
        }
    }
    let mean = off.iter().sum::<f64>() / off.len() as f64;
    off.sort_by(f64::total_cmp);
    let (p90, worst) = (off[off.len() * 9 / 10], off[off.len() - 1]);
    let said = format!("{} mixtures: mean {mean:.2}, nine tenths under {p90:.2}, worst {worst:.1}", off.len());
    // Said in the documents too: a change is looked at before it is kept.
    assert_eq!(said, "1656 mixtures: mean 3.03, nine tenths under 7.82, worst 40.1");
    assert!(mean <= 3.5, "{said}");
}
