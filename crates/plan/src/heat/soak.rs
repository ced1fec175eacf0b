//! Transient conduction through a wound layer, stepped in time.
//!
//! What it is: finite volumes across the layer and an L-stable second-order step (trapezium, then two-step backward
//! difference), heated outside, inside or both, on a rod with its own heat. What it is not: trade knowledge, or the flow of
//! steam and water between fibres, which is faster: this is the slow bound.
//!
//! Figures are SI: m, s, K (or °C throughout), W/(m K), J/(m³ K), W/(m² K).

/// The form a layer has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Flat.
    Flat,
    /// Round: a full lock, or a layer on a rod.
    Round,
}

/// A layer of fibre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    form: Form,
    inner: f64,
    thickness: f64,
    conductivity: f64,
    holds: f64,
}

impl Layer {
    /// A layer from an inner radius outwards; `inner` of zero is a full lock, and a flat layer has none.
    ///
    /// Nothing where a figure is not above zero (an inner radius: below it) or not finite.
    pub fn new(form: Form, inner: f64, thickness: f64, conductivity: f64, holds: f64) -> Option<Layer> {
        let above = |figure: f64| figure.is_finite() && figure > 0.0;
        let sound = inner.is_finite() && inner >= 0.0 && above(thickness) && above(conductivity) && above(holds);
        sound.then_some(Layer { form, inner, thickness, conductivity, holds })
    }

    /// Diffusivity, m²/s.
    pub fn diffusivity(&self) -> f64 {
        self.conductivity / self.holds
    }

    /// Its thickness, m.
    pub fn thickness(&self) -> f64 {
        self.thickness
    }

    fn area(&self, depth: f64) -> f64 {
        match self.form {
            Form::Flat => 1.0,
            Form::Round => self.inner + depth,
        }
    }
}

/// What lies inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Inside {
    /// No heat passes: the middle of a full lock, or of a layer heated alike from both sides.
    Closed,
    /// A rod with its own heat.
    Rod {
        /// Contact, W/(m² K).
        transfer: f64,
        /// Heat it holds for each m² of its face, J/(m² K).
        holds: f64,
    },
    /// Held at a temperature: a hot barrel.
    Held {
        /// Contact, W/(m² K).
        transfer: f64,
        /// Its temperature.
        heat: f64,
    },
}

/// What surrounds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outside {
    /// How well it hands heat over, W/(m² K).
    pub transfer: f64,
    /// Its temperature at the beginning.
    pub heat: f64,
    /// By how much it falls, K/s, down to `floor`.
    pub falls: f64,
    /// The lowest it falls to.
    pub floor: f64,
}

impl Outside {
    /// Held at a temperature.
    pub fn held(transfer: f64, heat: f64) -> Outside {
        Outside { transfer, heat, falls: 0.0, floor: heat }
    }

    fn at(&self, time: f64) -> f64 {
        (self.heat - self.falls * time).max(self.floor.min(self.heat))
    }
}

/// A layer while heat goes through it.
#[derive(Clone, Debug)]
pub struct Soak {
    layer: Layer,
    inside: Inside,
    /// The rod, where there is one, then the cells from the inside outwards.
    heats: Vec<f64>,
    /// Heat each of them holds, J/K.
    holds: Vec<f64>,
    /// Conductance from each to the next, W/K.
    links: Vec<f64>,
    time: f64,
}

/// Cells across a layer.
pub const CELLS: usize = 40;

impl Soak {
    /// A layer that starts at one temperature, in so many cells.
    pub fn new(layer: Layer, inside: Inside, start: f64, cells: usize) -> Soak {
        let cells = cells.max(2);
        // In the middle of a full lock there is no face for a rod.
        let inside = if layer.area(0.0) > 0.0 { inside } else { Inside::Closed };
        let step = layer.thickness / cells as f64;
        let mut holds = Vec::with_capacity(cells + 1);
        let mut links = Vec::with_capacity(cells);
        if let Inside::Rod { transfer, holds: rod } = inside {
            holds.push(rod * layer.area(0.0));
            links.push(layer.area(0.0) / (1.0 / transfer + step / (2.0 * layer.conductivity)));
        }
        for cell in 0..cells {
            holds.push(layer.holds * step * layer.area((cell as f64 + 0.5) * step));
            if cell > 0 {
                links.push(layer.conductivity * layer.area(cell as f64 * step) / step);
            }
        }
        Soak { layer, inside, heats: vec![start; holds.len()], holds, links, time: 0.0 }
    }

    fn first_cell(&self) -> usize {
        usize::from(matches!(self.inside, Inside::Rod { .. }))
    }

    fn step_width(&self) -> f64 {
        self.layer.thickness / (self.heats.len() - self.first_cell()) as f64
    }

    /// Conductance and temperature of the inner and the outer end.
    fn ends(&self, outside: &Outside, time: f64) -> [(f64, f64); 2] {
        let half = self.step_width() / (2.0 * self.layer.conductivity);
        let inner = match self.inside {
            Inside::Held { transfer, heat } => (self.layer.area(0.0) / (1.0 / transfer + half), heat),
            Inside::Closed | Inside::Rod { .. } => (0.0, 0.0),
        };
        let outer = self.layer.area(self.layer.thickness) / (1.0 / outside.transfer + half);
        [inner, (outer, outside.at(time))]
    }

    /// Heat that flows into each node, W.
    fn flows(&self, heats: &[f64], outside: &Outside, time: f64) -> Vec<f64> {
        let last = heats.len() - 1;
        let mut flows = vec![0.0; heats.len()];
        for (at, link) in self.links.iter().enumerate() {
            let flow = link * (heats[at] - heats[at + 1]);
            flows[at] -= flow;
            flows[at + 1] += flow;
        }
        let [inner, outer] = self.ends(outside, time);
        flows[0] += inner.0 * (inner.1 - heats[0]);
        flows[last] += outer.0 * (outer.1 - heats[last]);
        flows
    }

    /// Solves `holds × heat = right + part × flow(heat)`, the flow taken at `time` (Thomas's algorithm).
    fn solve(&self, right: &[f64], part: f64, outside: &Outside, time: f64) -> Vec<f64> {
        let count = right.len();
        let [inner, outer] = self.ends(outside, time);
        let mut above = vec![0.0; count];
        let mut value = vec![0.0; count];
        let (mut before_above, mut before_value) = (0.0, 0.0);
        for at in 0..count {
            let down = if at > 0 { self.links[at - 1] } else { 0.0 };
            let up = if at + 1 < count { self.links[at] } else { 0.0 };
            let mut main = self.holds[at] + part * (down + up);
            let mut constant = right[at];
            for (here, (conducts, heat)) in [(0, inner), (count - 1, outer)] {
                if here == at {
                    main += part * conducts;
                    constant += part * conducts * heat;
                }
            }
            let pivot = main - part * down * before_above;
            before_above = part * up / pivot;
            before_value = (constant + part * down * before_value) / pivot;
            above[at] = before_above;
            value[at] = before_value;
        }
        for at in (0..count - 1).rev() {
            value[at] += above[at] * value[at + 1];
        }
        value
    }

    /// One step of time, s.
    pub fn step(&mut self, step: f64, outside: &Outside) {
        // TR-BDF2 with the part that makes both stages share one matrix.
        let gamma = 2.0 - core::f64::consts::SQRT_2;
        let part = 0.5 * gamma * step;
        let flows = self.flows(&self.heats, outside, self.time);
        let mut right = Vec::with_capacity(flows.len());
        for (at, flow) in flows.iter().enumerate() {
            right.push(self.holds[at] * self.heats[at] + part * flow);
        }
        let middle = self.solve(&right, part, outside, self.time + gamma * step);
        let (of_middle, of_start) =
            (1.0 / (gamma * (2.0 - gamma)), (1.0 - gamma) * (1.0 - gamma) / (gamma * (2.0 - gamma)));
        for (at, right) in right.iter_mut().enumerate() {
            *right = self.holds[at] * (of_middle * middle[at] - of_start * self.heats[at]);
        }
        self.time += step;
        self.heats = self.solve(&right, part, outside, self.time);
    }

    /// Time since the start, s.
    pub fn time(&self) -> f64 {
        self.time
    }

    /// Begins to count time anew, with what it holds now.
    pub fn restart(&mut self) {
        self.time = 0.0;
    }

    /// The same with something else inside: a barrel drawn out, a tool switched off.
    #[must_use]
    pub fn with_inside(&self, inside: Inside) -> Soak {
        let mut soak = Soak::new(self.layer, inside, 0.0, self.heats.len() - self.first_cell());
        let from = self.first_cell();
        let to = soak.first_cell();
        for (new, old) in soak.heats[to..].iter_mut().zip(&self.heats[from..]) {
            *new = *old;
        }
        if to == 1 {
            // A rod that comes in takes the heat of what was there.
            soak.heats[0] = match self.inside {
                Inside::Held { heat, .. } => heat,
                _ => self.heats[0],
            };
        }
        soak
    }

    /// Temperatures in the middle of its cells, from the inside outwards.
    pub fn cells(&self) -> &[f64] {
        &self.heats[self.first_cell()..]
    }

    /// Temperature of the inner face.
    pub fn inner(&self) -> f64 {
        let first = self.first_cell();
        let (near, next) = (self.heats[first], self.heats[first + 1]);
        let conducts = 2.0 * self.layer.conductivity / self.step_width();
        match self.inside {
            Inside::Closed => (9.0 * near - next) / 8.0,
            Inside::Rod { transfer, .. } => (transfer * self.heats[0] + conducts * near) / (transfer + conducts),
            Inside::Held { transfer, heat } => (transfer * heat + conducts * near) / (transfer + conducts),
        }
    }

    /// Temperature of the outer face.
    pub fn outer(&self, outside: &Outside) -> f64 {
        let conducts = 2.0 * self.layer.conductivity / self.step_width();
        let near = self.heats[self.heats.len() - 1];
        (outside.transfer * outside.at(self.time) + conducts * near) / (outside.transfer + conducts)
    }

    /// The mean over the fibre, by volume.
    pub fn mean(&self) -> f64 {
        let first = self.first_cell();
        let (mut heat, mut holds) = (0.0, 0.0);
        for (part, at) in self.holds[first..].iter().zip(&self.heats[first..]) {
            heat += part * at;
            holds += part;
        }
        heat / holds
    }

    /// The coolest and the hottest of the fibre.
    pub fn range(&self, outside: &Outside) -> (f64, f64) {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        let faces = [self.inner(), self.outer(outside)];
        for heat in self.heats[self.first_cell()..].iter().chain(&faces) {
            low = low.min(*heat);
            high = high.max(*heat);
        }
        (low, high)
    }
}
