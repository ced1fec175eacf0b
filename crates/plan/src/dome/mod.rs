//! The head dome: how big each zone of this cap is, and how long each row.
//!
//! What it is: six tape measures made into a smooth, convex, left-right alike head shape, the cap edge on it, its zones, rows
//! and drawings. What it is not: the cap that was bought (its own measurements override), a face, or a choice of rows.
//!
//! How sure: the shape between the tapes is assumed. From the same tapes the cap comes out 7 % larger than the hair-bearing
//! area of one averaged scalp, level rows behind the ears 2 to 5 % longer (see the tests); a real head may differ by 8 %. The
//! integration itself is far finer than that.

mod curve;
mod edge;
mod figure;
mod fit;
mod measures;
mod mesh;
mod parting;
mod proportions;
mod rows;
mod solid;
mod vector;
mod view;
mod words;
mod zones;

pub use edge::Edge;
pub use fit::Residual;
pub use measures::{Fault, Field, HeadMeasures, Problem, TapeFrom};
pub use mesh::Mesh;
pub use parting::Parting;
pub use rows::{RowCurve, RowEnd, Section, Span};
pub use solid::{Powers, Solid};
pub use vector::Point;
pub use view::{View, ViewShape, ZoneShape};
pub use zones::Zone;

use core::cell::OnceCell;
use curve::{Tape, length};
use edge::{CapEdge, Marks, distance_to_lines};
use measure::quantity::{
    Area, Length,
    units::{millimeter, square_millimeter},
};
use zones::Division;

/// Rows of mesh from the top to the edge.
const MESH_ROWS: u32 = 14;

/// A fitted head with its cap.
#[derive(Debug, Clone)]
pub struct Dome {
    solid: Solid,
    marks: Marks,
    edge: CapEdge,
    division: Division,
    parting: Option<Parting>,
    residuals: [Residual; 6],
    /// Mid line from the top down the back, and how much of it the cap covers.
    back: Tape,
    back_length: f64,
    /// Where the crown ends on it.
    upper_mark: f64,
    /// Mid line from the top forward to the hairline.
    front: Tape,
    /// The cap before zones are cut into it, and after.
    plain: Mesh,
    mesh: Mesh,
    /// Area of the whole, once asked for.
    whole: OnceCell<f64>,
    areas: [f64; Zone::ALL.len()],
}

impl Dome {
    /// Fits a dome to measures, without a parting; or says all that no head can have.
    pub fn fit(measures: &HeadMeasures) -> Result<Self, Vec<Problem>> {
        let problems = measures.check();
        if !problems.is_empty() {
            return Err(problems);
        }
        let fitted = fit::fit(measures);
        let (solid, marks) = (fitted.solid, fitted.marks);
        let edge = CapEdge::new(&solid, &marks);
        let division = Division::new(&edge, marks.scale, marks.tragus, marks.hairline);
        // Anticlockwise from above: from the front over the left to the nape, then up the right.
        let mut columns: Vec<Point> = edge.right().iter().map(|c| [-c.1[0], c.1[1], c.1[2]]).collect();
        columns.extend(edge.right().iter().rev().skip(1).take(edge.right().len() - 2).map(|c| c.1));
        let plain = Mesh::cap(&solid, &columns, MESH_ROWS);
        let mut dome = Self {
            residuals: fit::residuals(measures, &fitted),
            back: fit::back_of_head(&solid),
            back_length: 0.0,
            upper_mark: 0.0,
            front: fit::front_of_head(&solid, marks.hairline),
            whole: OnceCell::new(),
            mesh: plain.clone(),
            areas: [0.0; Zone::ALL.len()],
            parting: None,
            plain,
            solid,
            marks,
            edge,
            division,
        };
        let below = |mark: f64| marks.nape - dome.back.at(mark)[2];
        dome.back_length = curve::zero_between(0.0, dome.back.length(), &below);
        let under = |mark: f64| -dome.division.over_upper(dome.back.at(mark));
        dome.upper_mark = curve::zero_between(0.0, dome.back_length, &under);
        dome.divide();
        Ok(dome)
    }

    /// The same dome with a parting; or what this head's top has no room for.
    pub fn with_parting(&self, parting: Parting) -> Result<Self, Vec<Problem>> {
        let band = parting::place(&self.solid, &self.edge, &self.division, &parting)?;
        let mut dome = self.clone();
        dome.division.part = Some(band);
        if dome.parting.replace(parting).is_some() {
            dome.divide();
            return Ok(dome);
        }
        // A first parting takes from the top only.
        dome.division.part_the_top(&dome.solid, &mut dome.mesh);
        for zone in [Zone::Top, Zone::Part] {
            let own = dome.mesh.triangles.iter().filter(|t| zones::zone_of(t.mark) == zone);
            dome.areas[zone as usize] = own.map(|t| dome.mesh.area_over(&dome.solid, t)).sum();
        }
        Ok(dome)
    }

    fn divide(&mut self) {
        self.mesh = self.plain.clone();
        self.division.divide(&self.solid, &mut self.mesh);
        self.areas = [0.0; Zone::ALL.len()];
        for t in &self.mesh.triangles {
            self.areas[usize::from(t.mark)] += self.mesh.area_over(&self.solid, t);
        }
    }

    /// Each measure as given and as the dome's own tape says.
    pub fn residuals(&self) -> &[Residual; 6] {
        &self.residuals
    }

    /// Area of the cap, integrated over the undivided surface.
    pub fn area(&self) -> Area {
        Area::new::<square_millimeter>(*self.whole.get_or_init(|| self.plain.area(&self.solid)))
    }

    /// Area of a zone.
    pub fn zone_area(&self, zone: Zone) -> Area {
        Area::new::<square_millimeter>(self.areas[zone as usize])
    }

    /// The zone a point of the cap lies in.
    pub fn zone_at(&self, point: Point) -> Zone {
        self.division.zone(point)
    }

    /// The parting asked for, if any.
    pub fn parting(&self) -> Option<&Parting> {
        self.parting.as_ref()
    }

    /// Length of the parting from the front edge backwards; zero without one.
    pub fn part_length(&self) -> Length {
        self.parting.map_or(Length::new::<millimeter>(0.0), |p| p.length)
    }

    /// Points of a stretch of the cap edge in mm, one line per piece; the whole is closed (first point repeated last).
    pub fn edge(&self, edge: Edge) -> Vec<Vec<Point>> {
        self.edge.lines(edge)
    }

    /// Length of a stretch of the cap edge.
    pub fn edge_length(&self, edge: Edge) -> Length {
        Length::new::<millimeter>(self.edge.lines(edge).iter().map(|l| length(l)).sum())
    }

    /// Length of the front edge, sideburn tab to sideburn tab along the hairline: what a hairline is ordered by.
    pub fn front_edge_length(&self) -> Length {
        self.edge_length(Edge::Front)
    }

    /// Shortest straight distance from a point to a stretch of the edge (within 2 % of the way along the head up to 60 mm).
    pub fn distance_to(&self, edge: Edge, point: Point) -> Length {
        Length::new::<millimeter>(distance_to_lines(point, &self.edge.lines(edge)))
    }

    /// The least such distance along a row: how near it comes to an edge that others see.
    pub fn row_distance_to(&self, edge: Edge, row: &RowCurve) -> Length {
        let lines = self.edge.lines(edge);
        let least = row.points.iter().map(|p| distance_to_lines(*p, &lines)).fold(f64::INFINITY, f64::min);
        Length::new::<millimeter>(least)
    }

    /// The body under the cap: semi-axes and roundness, mm.
    pub fn solid(&self) -> &Solid {
        &self.solid
    }

    /// Height of the tragus in the head's frame (below zero).
    pub fn tragus_height(&self) -> Length {
        Length::new::<millimeter>(self.marks.tragus)
    }

    /// Height of the middle of the front hairline in the head's frame.
    pub fn hairline_height(&self) -> Length {
        Length::new::<millimeter>(self.marks.hairline)
    }

    /// Height of the nape edge in the head's frame (below zero).
    pub fn nape_height(&self) -> Length {
        Length::new::<millimeter>(self.marks.nape)
    }

    /// Tape from tragus to tragus across the forehead at a height in the head's frame.
    pub fn across_forehead_at(&self, height: Length) -> Length {
        let z = height.get::<millimeter>();
        Length::new::<millimeter>(fit::across_forehead(&self.solid, self.marks.tragus, z))
    }
}
