//! What must not move a figure: hearsay, the order of the readings, the way a house faces.

use super::answer;
use eavebook_core::survey::{Point, Sketch};
use eavebook_core::survey_file::SurveyFile;
use eavebook_core::units::Angle;
use serde_json::Value;

/// Changes that move a figure and should not.
pub fn what_must_not_move_a_figure(file: &SurveyFile, got: &Value) -> Vec<String> {
    let mut bad = Vec::new();
    let mut same = |what: &str, changed: &SurveyFile, within: f64| {
        let told = answer(changed);
        for total in ["area", "plan_area", "area_sigma"] {
            let (was, is) = (&got["totals"][total], &told["totals"][total]);
            let holds = was
                .as_f64()
                .zip(is.as_f64())
                .is_some_and(|(was, is)| (was - is).abs() <= within * (1.0 + was.abs()));
            if !holds {
                bad.push(format!("{what} moves {total} from {was} to {is}"));
            }
        }
    };
    let mut unheard = file.clone();
    unheard.survey.hearsay.clear();
    same("leaving hearsay out", &unheard, 1e-9);
    let mut shuffled = file.clone();
    for body in &mut shuffled.survey.bodies {
        body.readings.reverse();
    }
    same("the order of the readings", &shuffled, 1e-5);
    let mut turned = file.clone();
    if let [body] = turned.survey.bodies.as_mut_slice()
        && let Sketch::Turned { start, heading, .. } = &mut body.outline
    {
        *start = Point { x: 12.0, y: -7.0 };
        *heading = Angle::degrees(heading.in_degrees() + 31.0);
        same("turning the house", &turned, 1e-5);
    }
    bad
}
