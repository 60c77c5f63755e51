//! A result beside what is expected of it.

use serde_json::Value;

/// Everything that falls short, in sentences; empty when the house holds.
pub fn compare(expected: &Value, got: &Value) -> Vec<String> {
    let mut bad = Vec::new();
    for (name, body) in entries(&expected["bodies"]) {
        match list(&got["bodies"])
            .iter()
            .find(|found| found["id"] == **name)
        {
            Some(found) => bad.extend(
                compare_body(body, found)
                    .into_iter()
                    .map(|why| format!("body {name} {why}")),
            ),
            None => bad.push(format!("no body {name}")),
        }
    }
    totals(expected, got, &mut bad);
    faces_and_edges(expected, got, &mut bad);
    hearsay(expected, got, &mut bad);
    words(expected, got, &mut bad);
    bad
}

fn compare_body(expected: &Value, got: &Value) -> Vec<String> {
    let mut bad = Vec::new();
    let legs = list(&expected["legs"]);
    if list(&got["legs"]).len() != legs.len() {
        return vec![format!("has not {} legs", legs.len())];
    }
    for (k, (leg, found)) in legs.iter().zip(list(&got["legs"])).enumerate() {
        near(
            &format!("leg {k} length"),
            &found["length"],
            &leg["length"],
            &mut bad,
        );
        within(
            &format!("leg {k} sigma"),
            &found["sigma"],
            &leg["sigma"],
            &mut bad,
        );
        if leg["redundancy"].is_array() {
            near(
                &format!("leg {k} redundancy"),
                &found["redundancy"],
                &leg["redundancy"],
                &mut bad,
            );
        }
    }
    let corners = list(&got["corners"]);
    if corners.len() != list(&expected["corners"]).len() {
        bad.push("has another number of corners".into());
        return bad;
    }
    if corners
        .iter()
        .any(|corner| number(&corner["sigma"]).is_none_or(|sigma| sigma < 0.0))
    {
        bad.push("has a corner without sigma".into());
    }
    for pair in list(&expected["between_corners"]) {
        let [a, b, ..] = list(pair) else { continue };
        let (from, to) = (&corners[index(a)], &corners[index(b)]);
        let apart = |axis: &str| Some(number(&from[axis])? - number(&to[axis])?);
        let distance = apart("x")
            .zip(apart("y"))
            .map(|(x, y)| Value::from(x.hypot(y)));
        let wanted = Value::from(vec![pair[2].clone(), pair[3].clone()]);
        near(
            &format!("corner {a} to {b}"),
            &distance.unwrap_or_default(),
            &wanted,
            &mut bad,
        );
    }
    let unproved = list(&got["unproved"]);
    for reading in list(&expected["unproved"]["must"]) {
        if !unproved.contains(reading) {
            bad.push(format!("{reading} is checked by nothing and is not named"));
        }
    }
    for reading in list(&expected["unproved"]["must_not"]) {
        if unproved.contains(reading) {
            bad.push(format!("{reading} is checked and is called unproved"));
        }
    }
    suspects(&expected["suspects"], list(&got["suspects"]), &mut bad);
    if let Some(closure) = expected.get("closure") {
        for axis in ["along", "across"] {
            let found = number(&got["closure"][axis]).map(f64::abs).map(Value::from);
            let wanted = Value::from(vec![closure[axis].clone(), closure["tol"].clone()]);
            near(
                &format!("closure {axis}"),
                &found.unwrap_or_default(),
                &wanted,
                &mut bad,
            );
        }
        if got["closure"]["words"].as_str().is_none_or(str::is_empty) {
            bad.push("closure has no words".into());
        }
    }
    bad
}

fn suspects(expected: &Value, named: &[Value], bad: &mut Vec<String>) {
    let is_named = |reading: &Value| named.iter().any(|suspect| suspect["reading"] == *reading);
    if expected["none"] == true {
        if !named.is_empty() {
            bad.push(format!(
                "is clean, yet {} readings are suspect",
                named.len()
            ));
        }
        return;
    }
    for reading in list(&expected["holds"]) {
        if !is_named(reading) {
            bad.push(format!("{reading} is not among the suspects"));
        }
    }
    if named.len() > index(&expected["at_most"]) {
        bad.push(format!("{} suspects are too many", named.len()));
    }
    for (reading, value) in entries(&expected["likely"]) {
        let found = named.iter().find(|suspect| suspect["reading"] == **reading);
        let found = found.map(|suspect| suspect["likely_value"].clone());
        near(
            &format!("likely value of {reading}"),
            &found.unwrap_or_default(),
            value,
            bad,
        );
    }
}

fn totals(expected: &Value, got: &Value, bad: &mut Vec<String>) {
    let totals = &got["totals"];
    for (name, wanted) in entries(&expected["totals"]) {
        near(
            &format!("total {name}"),
            &totals[name.as_str()],
            wanted,
            bad,
        );
    }
    if let Some(range) = expected.get("area_sigma") {
        within("total area_sigma", &totals["area_sigma"], range, bad);
        let off = number(&totals["area"])
            .zip(number(&expected["truth"]["area"]))
            .map(|(area, truth)| (area - truth).abs());
        let sigma = number(&totals["area_sigma"]).unwrap_or(0.0);
        if off.is_none_or(|off| off > 3.0 * sigma) {
            bad.push("the area is more than three sigma from the truth".into());
        }
    }
}

fn faces_and_edges(expected: &Value, got: &Value, bad: &mut Vec<String>) {
    let faces = list(&got["faces"]);
    for face in list(&expected["faces"]) {
        let found = faces
            .iter()
            .find(|found| found["body"] == face["body"] && found["leg"] == face["leg"]);
        let wanted = Value::from(vec![face["pitch"].clone(), face["tol"].clone()]);
        near(
            &format!(
                "pitch of the face of leg {} of {}",
                face["leg"], face["body"]
            ),
            &found
                .map(|found| found["pitch"].clone())
                .unwrap_or_default(),
            &wanted,
            bad,
        );
    }
    let area = number(&got["totals"]["area"]).unwrap_or(f64::NAN);
    let sum: f64 = faces.iter().filter_map(|face| number(&face["area"])).sum();
    if !faces.is_empty() && (sum - area).abs() > 0.01 + 1e-5 * area {
        bad.push(format!("the faces come to {sum}, the total says {area}"));
    }
    for kind in ["ridge", "hip", "valley", "eave", "rake"] {
        let Some(total) = number(&got["totals"][kind]) else {
            continue;
        };
        let sum: f64 = list(&got["edges"])
            .iter()
            .filter(|edge| edge["kind"] == kind)
            .filter_map(|edge| number(&edge["length"]))
            .sum();
        if (sum - total).abs() > 0.05 {
            bad.push(format!(
                "the {kind} edges come to {sum}, the total says {total}"
            ));
        }
    }
}

fn hearsay(expected: &Value, got: &Value, bad: &mut Vec<String>) {
    for said in list(&expected["hearsay"]) {
        let source = &said["source"];
        let found = list(&got["hearsay"])
            .iter()
            .find(|found| found["source"] == *source);
        let Some(found) = found else {
            bad.push(format!("no hearsay of {source}"));
            continue;
        };
        if number(&found["difference_percent"]).is_none() {
            bad.push(format!("{source}: no difference in per cent"));
        }
        if said["percent"].is_array() {
            let size = number(&found["difference_percent"])
                .map(f64::abs)
                .map(Value::from);
            near(
                &format!("{source}: difference"),
                &size.unwrap_or_default(),
                &said["percent"],
                bad,
            );
        }
        if !said["explained"].is_null() && found["explained"] != said["explained"] {
            bad.push(format!("{source}: explained must be {}", said["explained"]));
        }
    }
}

/// What is first, what is said and what is named.
fn words(expected: &Value, got: &Value, bad: &mut Vec<String>) {
    let first = got["retake_first"][0].to_string();
    let wanted = list(&expected["retake_first"]);
    if !wanted.is_empty() && !wanted.iter().any(|name| first.contains(&name.to_string())) {
        bad.push(format!("{first} is first, not one of {wanted:?}"));
    }
    let cautions = got["cautions"].to_string().to_lowercase();
    let speaks = |words: &Value| {
        let plain = words.as_str().unwrap_or_default().replace("\\b", "");
        plain.split('|').any(|word| cautions.contains(word))
    };
    for words in list(&expected["cautions"]) {
        if !speaks(words) {
            bad.push(format!("the cautions say nothing of {words}"));
        }
    }
    for words in list(&expected["not_cautions"]) {
        if speaks(words) {
            bad.push(format!("the cautions speak of {words} without cause"));
        }
    }
    let because = list(&got["because"]["totals.area"]);
    for reading in list(&expected["because"]) {
        if !because.contains(reading) {
            bad.push(format!("{reading} made the area and is not named"));
        }
    }
}

fn near(what: &str, found: &Value, wanted: &Value, bad: &mut Vec<String>) {
    let (value, within) = (number(&wanted[0]), number(&wanted[1]));
    let holds = number(found)
        .zip(value.zip(within))
        .is_some_and(|(found, (value, within))| (found - value).abs() <= within);
    if !holds {
        bad.push(format!("{what}: {wanted} expected, {found} found"));
    }
}

fn within(what: &str, found: &Value, range: &Value, bad: &mut Vec<String>) {
    let (low, high) = (number(&range[0]), number(&range[1]));
    let holds = number(found)
        .zip(low.zip(high))
        .is_some_and(|(found, (low, high))| (low..=high).contains(&found));
    if !holds {
        bad.push(format!("{what}: between {range} expected, {found} found"));
    }
}

fn number(value: &Value) -> Option<f64> {
    value.as_f64()
}

fn index(value: &Value) -> usize {
    value
        .as_u64()
        .and_then(|k| usize::try_from(k).ok())
        .unwrap_or(0)
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn entries(value: &Value) -> Vec<(&String, &Value)> {
    value
        .as_object()
        .map(|map| map.iter().collect())
        .unwrap_or_default()
}
