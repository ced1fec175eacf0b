//! Colours from root to ends, drawn band by band.
//!
//! What it is: pickers and places for one value of the look. What it is not: the strip (see the sheet).

use measure::say::Arg;
use record::{
    history::entry::{Key, LogId, Of},
    wig::{
        shade::{Along, Band, Shade},
        zone::Zone,
    },
};
use yew::prelude::*;

use super::{Here, photo::FromPhoto};
use crate::{
    parts::{
        cell::use_cell,
        field::{Stands, figure},
        plain::{button, folded},
        typed::text_of,
    },
    shell::talk::{t, ta},
    store::{desk::use_desk, judge, model::Whose},
};

/// The editor of a slot.
pub fn bands(here: &Here<'_>, slot: &'static str, of: Of) -> Html {
    let base = here.wig.base_shade().unwrap_or(Shade([240, 230, 210]));
    html! { <Bands whose={here.whose} log={here.log} {slot} {of} {base} /> }
}

/// Which slot.
#[derive(Properties, PartialEq)]
pub struct BandsProps {
    whose: Whose,
    log: LogId,
    slot: &'static str,
    of: Of,
    base: Shade,
}

/// A pink to begin with: any colour that shows on most bases.
const FIRST: Shade = Shade([192, 74, 122]);

#[component]
fn Bands(props: &BandsProps) -> Html {
    let desk = use_desk();
    let refusal = use_cell(|| None::<String>);
    let (whose, log, slot, of) = (props.whose, props.log, props.slot, props.of);
    let state = desk.state(whose, log);
    let along = Key::new(log, slot, of).and_then(|key| state.value(key)).and_then(|value| value.along().cloned());
    let write = {
        let (desk, refusal) = (desk.clone(), refusal.clone());
        move |text: String| match judge::set(desk.model(), whose, log, slot, of, &text) {
            Ok(body) => {
                refusal.set(None);
                desk.write(whose, vec![(log, body)], None, Callback::noop());
            }
            Err(reason) => refusal.set(Some(reason)),
        }
    };
    let name = match of {
        Of::Zone(zone) => Zone::name(zone),
        _ => "wig",
    };
    let as_text = folded(
        t("web.colour_as_text"),
        html! { <div class="fields">{ figure(whose, log, slot, of, Some(Stands::plain(t("web.no_colours"))), Some("web.along_hint")) }</div> },
    );
    let Some(along) = along else {
        let (write, base) = (write.clone(), props.base);
        let begin = Callback::from(move |_: MouseEvent| {
            let bands = vec![Band { shade: base, to: 50 }, Band { shade: FIRST, to: 100 }];
            write(Along::new(bands, false).map(|along| along.to_string()).unwrap_or_default());
        });
        return html! { <>
            <p class="actions">{ button("", t("web.draw_colours"), begin) }</p>
            { as_text }
        </> };
    };
    // Another row of bands in place of this one.
    let changed = {
        let (along, write, refusal) = (along.clone(), write.clone(), refusal.clone());
        move |change: &dyn Fn(&mut Vec<Band>, &mut bool)| {
            let (mut bands, mut smooth) = (along.bands().to_vec(), along.smooth());
            change(&mut bands, &mut smooth);
            match Along::new(bands, smooth) {
                Some(along) => write(along.to_string()),
                None => refusal.set(Some(t("web.bands_rise"))),
            }
        }
    };
    let last = along.bands().len() - 1;
    let row = |index: usize, band: &Band| {
        let number = Arg::Count(index as i64 + 1);
        let shade = {
            let changed = changed.clone();
            Callback::from(move |text: String| {
                if let Some(shade) = Shade::read(&text) {
                    changed(&|bands, _| bands[index].shade = shade);
                }
            })
        };
        let typed = {
            let shade = shade.clone();
            Callback::from(move |event: Event| shade.emit(text_of(&event)))
        };
        let ends = {
            let changed = changed.clone();
            Callback::from(move |event: Event| {
                let to = text_of(&event).trim().trim_end_matches('%').trim().parse::<u8>().unwrap_or(0);
                changed(&|bands, _| bands[index].to = to);
            })
        };
        let drop = {
            let changed = changed.clone();
            Callback::from(move |_: MouseEvent| {
                changed(&|bands, _| {
                    bands.remove(index);
                    if let Some(last) = bands.last_mut() {
                        last.to = 100;
                    }
                });
            })
        };
        let named = |key: &'static str| ta(key, [number.clone()]);
        let id = format!("band-{name}-{}", index + 1);
        html! {
            <li>
                <span class="number">{ format!("{}.", index + 1) }</span>
                <span class="shade">
                    <input type="color" value={band.shade.to_string()} onchange={typed.clone()} aria-label={named("web.band_pick")} />
                    <input type="text" id={id.clone()} value={band.shade.to_string()} onchange={typed} aria-label={named("web.band_typed")} autocomplete="off" />
                </span>
                if index < last {
                    <label>{ t("web.band_ends") }<input type="text" id={format!("{id}-ends")} inputmode="numeric" value={band.to.to_string()} onchange={ends} autocomplete="off" />{ "%" }</label>
                } else {
                    <span>{ t("web.band_to_ends") }</span>
                }
                if last > 0 {
                    <button type="button" class="plain" aria-label={named("web.band_drop_named")} onclick={drop}>{ t("web.band_drop") }</button>
                }
                { folded(t("web.shade_from_photo"), html! { <FromPhoto id={id} white=false picked={shade} /> }) }
            </li>
        }
    };
    let add = {
        let changed = changed.clone();
        Callback::from(move |_: MouseEvent| {
            changed(&|bands, _| {
                let before = bands.len().checked_sub(2).and_then(|at| bands.get(at)).map_or(0, |band| band.to);
                if let Some(end) = bands.last_mut() {
                    let shade = end.shade;
                    end.to = before + (100 - before) / 2;
                    bands.push(Band { shade, to: 100 });
                }
            });
        })
    };
    let soft = {
        let changed = changed.clone();
        Callback::from(move |_: Event| changed(&|_, smooth| *smooth = !*smooth))
    };
    let take_back = {
        let write = write.clone();
        Callback::from(move |_: MouseEvent| write(String::new()))
    };
    html! {
        <div class="bands">
            <ol>{ for along.bands().iter().enumerate().map(|(index, band)| row(index, band)) }</ol>
            if let Some(reason) = refusal.get() { <p class="reason" role="alert">{ reason }</p> }
            <div class="ticks"><label class="tick"><input type="checkbox" checked={along.smooth()} onchange={soft} /><span>{ t("web.bands_smooth") }</span></label></div>
            <p class="actions">
                if last + 1 < Along::MOST { { button("", t("web.band_add"), add) } }
                { button("plain", t("web.bands_clear"), take_back) }
            </p>
            { as_text }
        </div>
    }
}
