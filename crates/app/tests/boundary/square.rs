//! The square of a hub, photographed: what is read off it is the link that was shown, or nothing.

use crate::person::Person;
use eavebook_app::reply::{CopiesReply, InviteView, Reply, Sentence, SquareView};
use eavebook_app::request::CopiesRequest;
use eavebook_app::{App, HubHost, Invites, Pairing};
use image::{DynamicImage, GrayImage, ImageFormat, Luma};
use proptest::prelude::*;
use qrcode::QrCode;
use std::io::Cursor;

const LINK: &str = "https://192.168.1.20:7443#pin=\
    5d2f0c9a7be14436a8f1c2d3e4b5a69788776655443322110ffeeddccbbaa990&code=7KQ2M9XW4T0123456789ABCDEF";

/// A hub that invites by one link.
#[derive(Debug)]
struct Keeper(String);

impl HubHost for Keeper {
    fn invite(&self) -> Result<Invites, String> {
        Ok(Invites {
            link: self.0.clone(),
            typed: String::new(),
        })
    }
}

/// The square as the screen of a hub's machine draws it.
fn shown(link: &str) -> InviteView {
    let person = Person::begins();
    let pairing = Pairing {
        url: "https://127.0.0.1:1".to_owned(),
        pin: None,
        token: "t".to_owned(),
        company: "Pretend Roofs".to_owned(),
    };
    let keeper = Box::new(Keeper(link.to_owned()));
    person.app().share(pairing, keeper).unwrap();
    match person.says(CopiesRequest::Invite) {
        Reply::Copies(CopiesReply::Invite(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// Its fields, dark or not, quiet zone and all: read off the path that the screen draws.
fn fields(view: &InviteView) -> Fields {
    let side = view.side as usize;
    let mut dark = vec![false; side * side];
    for field in view.fields.split('M').skip(1) {
        let (place, rest) = field.split_once('h').unwrap();
        assert_eq!(rest, "1v1h-1z");
        let (x, y) = place.split_once(' ').unwrap();
        let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
        dark[y * side + x] = true;
    }
    Fields { side, dark }
}

struct Fields {
    side: usize,
    dark: Vec<bool>,
}

/// How somebody held the camera, and what light there was.
#[derive(Clone, Copy, Debug)]
struct Look {
    /// Degrees that the phone was turned.
    turned: f64,
    /// How much of the shorter side of the picture the square takes.
    fills: f64,
    /// How far the camera stood to the side and above, as a share of the distance: 0 is straight before it.
    aside: [f64; 2],
    /// Shades of dark and light, 0 to 255.
    shades: [f64; 2],
    /// How much darker the far side of the picture is, as a share.
    shadow: f64,
    /// Largest noise of a point, shades.
    noise: f64,
}

const STRAIGHT: Look = Look {
    turned: 0.0,
    fills: 0.6,
    aside: [0.0, 0.0],
    shades: [20.0, 235.0],
    shadow: 0.0,
    noise: 0.0,
};

const WIDTH: u32 = 1000;
const HEIGHT: u32 = 750;

/// A photo of the square: each point is seen through the camera, four looks a point.
fn photo(square: &Fields, look: &Look) -> GrayImage {
    let mut noise = 0x2545_f491_4f6c_dd1d_u64;
    GrayImage::from_fn(WIDTH, HEIGHT, |x, y| {
        let looks = [[0.25, 0.25], [0.75, 0.25], [0.25, 0.75], [0.75, 0.75]];
        let seen = looks.map(|[dx, dy]| shade(square, look, f64::from(x) + dx, f64::from(y) + dy));
        let light = 1.0 - look.shadow * f64::from(x) / f64::from(WIDTH);
        // Xorshift: Marsaglia 2003.
        noise ^= noise << 13;
        noise ^= noise >> 7;
        noise ^= noise << 17;
        let grain = ((noise >> 40) as f64 / f64::from(1 << 24) - 0.5) * 2.0 * look.noise;
        Luma([(seen.iter().sum::<f64>() / 4.0 * light + grain).clamp(0.0, 255.0) as u8])
    })
}

/// The shade at one point of the picture: the line of sight through it meets the plane of the square.
fn shade(square: &Fields, look: &Look, x: f64, y: f64) -> f64 {
    let unit = f64::from(HEIGHT) * look.fills / 2.0;
    let (x, y) = (
        (x - f64::from(WIDTH) / 2.0) / unit,
        (y - f64::from(HEIGHT) / 2.0) / unit,
    );
    // Seen from aside the far edge is smaller: the homography of a tilted plane.
    let far = 1.0 - look.aside[0] * x - look.aside[1] * y;
    let (x, y) = (x / far, y / far);
    let (sin, cos) = look.turned.to_radians().sin_cos();
    let (x, y) = (x * cos + y * sin, y * cos - x * sin);
    let field = |along: f64| (along + 1.0) / 2.0 * square.side as f64;
    let (across, down) = (field(x), field(y));
    let on = |along: f64| (0.0..square.side as f64).contains(&along);
    let dark = far > 0.0
        && on(across)
        && on(down)
        && square.dark[down as usize * square.side + across as usize];
    // Around the screen lies a table of middle shade.
    let table = !(on(across) && on(down));
    let [black, white] = look.shades;
    match (dark, table) {
        (true, _) => black,
        (false, true) => black + (white - black) * 0.6,
        (false, false) => white,
    }
}

fn jpeg(points: GrayImage) -> Vec<u8> {
    file(points, ImageFormat::Jpeg)
}

fn file(points: GrayImage, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let picture = DynamicImage::from(points);
    picture.write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}

fn an_app() -> (tempfile::TempDir, App) {
    let dir = tempfile::tempdir().unwrap();
    let app = App::open(dir.path()).unwrap();
    (dir, app)
}

fn reads(app: &App, photo: &[u8]) -> Result<String, Sentence> {
    match app.read_square(photo) {
        Reply::Copies(CopiesReply::Square(SquareView { link })) => Ok(link),
        Reply::Refused(said) => Err(said),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_square_photographed_straight_is_read_and_nothing_is_joined() {
    let (_dir, app) = an_app();
    let square = fields(&shown(LINK));
    assert_eq!(reads(&app, &jpeg(photo(&square, &STRAIGHT))).unwrap(), LINK);
    let png = file(photo(&square, &STRAIGHT), ImageFormat::Png);
    assert_eq!(reads(&app, &png).unwrap(), LINK);
    assert_eq!(app.pairing().unwrap(), None);
}

#[test]
fn turned_by_any_angle_it_is_read() {
    let (_dir, app) = an_app();
    let square = fields(&shown(LINK));
    for turned in (0..360).step_by(30).map(f64::from) {
        let look = Look { turned, ..STRAIGHT };
        assert_eq!(
            reads(&app, &jpeg(photo(&square, &look))).unwrap(),
            LINK,
            "{turned}°"
        );
    }
}

#[test]
fn in_little_light_in_a_shadow_and_with_the_noise_of_night_it_is_read() {
    let (_dir, app) = an_app();
    let square = fields(&shown(LINK));
    let dimmed = Look {
        shades: [10.0, 60.0],
        ..STRAIGHT
    };
    let pale = Look {
        shades: [150.0, 230.0],
        ..STRAIGHT
    };
    let shadow = Look {
        shadow: 0.7,
        ..STRAIGHT
    };
    let night = Look {
        shades: [20.0, 140.0],
        noise: 40.0,
        ..STRAIGHT
    };
    for look in [dimmed, pale, shadow, night] {
        assert_eq!(
            reads(&app, &jpeg(photo(&square, &look))).unwrap(),
            LINK,
            "{look:?}"
        );
    }
}

#[test]
fn from_aside_and_from_below_and_far_off_it_is_read() {
    let (_dir, app) = an_app();
    let square = fields(&shown(LINK));
    for aside in [[0.25, 0.0], [-0.25, 0.0], [0.0, 0.25], [0.15, -0.2]] {
        for turned in [0.0, 30.0] {
            let look = Look {
                aside,
                turned,
                ..STRAIGHT
            };
            assert_eq!(
                reads(&app, &jpeg(photo(&square, &look))).unwrap(),
                LINK,
                "{look:?}"
            );
        }
    }
    let far = Look {
        fills: 0.3,
        ..STRAIGHT
    };
    assert_eq!(reads(&app, &jpeg(photo(&square, &far))).unwrap(), LINK);
}

#[test]
fn a_photo_without_a_square_or_with_another_one_is_refused_with_what_to_do() {
    let (_dir, app) = an_app();
    let code = |photo: &[u8]| reads(&app, photo).unwrap_err();
    let blank = GrayImage::from_pixel(WIDTH, HEIGHT, Luma([128]));
    let said = code(&jpeg(blank));
    assert_eq!(said.code, "no_square");
    assert!(
        said.en.contains("or type the line below the square"),
        "{}",
        said.en
    );
    let empty = Fields {
        side: 40,
        dark: vec![false; 1600],
    };
    let night = Look {
        noise: 120.0,
        ..STRAIGHT
    };
    assert_eq!(code(&jpeg(photo(&empty, &night))).code, "no_square");
    assert_eq!(code(b"\xff\xd8\xff\xe0 cut off").code, "square_not_seen");
    assert_eq!(code(b"words").code, "square_not_seen");
    for other in [
        "a note on the fridge",
        "https://shop.example/leaflet",
        "https://192.168.1.20:7443#code=",
        // Typed words are no link: whoever types them sees them.
        "192.168.1.20:7443 7KQ2M9XW4T 5d2f0c9a7be1",
        // A sign that turns what follows it round, so that it would be read as another address.
        "https://192.168.1.20:7443\u{202e}#code=7KQ2M9XW4T",
    ] {
        let code_of = QrCode::new(other).unwrap();
        let side = code_of.width() + 8;
        let mut square = Fields {
            side,
            dark: vec![false; side * side],
        };
        for (at, color) in code_of.to_colors().into_iter().enumerate() {
            let (x, y) = (at % code_of.width() + 4, at / code_of.width() + 4);
            square.dark[y * side + x] = color == qrcode::Color::Dark;
        }
        let said = code(&jpeg(photo(&square, &STRAIGHT)));
        assert_eq!(said.code, "other_square", "{other}");
    }
}

#[test]
fn a_picture_of_a_few_points_is_none_and_breaks_nothing() {
    let (_dir, app) = an_app();
    for (width, height) in [(1, 1), (1, 50), (50, 1), (3, 3), (8, 8), (17, 9)] {
        let points =
            GrayImage::from_fn(width, height, |x, y| Luma([((x * 7 + y * 13) % 256) as u8]));
        let said = reads(&app, &file(points, ImageFormat::Png)).unwrap_err();
        assert_eq!(said.code, "no_square", "{width} x {height}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    /// However it was held and lit: the link that was shown, whole, or none.
    #[test]
    fn what_is_read_is_what_was_shown_or_nothing(
        host in "(10\\.[0-9]{1,2}\\.[0-9]{1,2}\\.[0-9]{1,2}|[a-z]{3,12}\\.example)",
        port in 1024_u16..,
        pin in "[0-9a-f]{64}",
        code in "[0-9A-HJKMNP-TV-Z]{26}",
        turned in 0.0..360.0,
        fills in 0.15..0.9,
        aside in prop::array::uniform2(-0.4..0.4),
        dark in 0.0..120.0,
        contrast in 10.0..135.0,
        shadow in 0.0..0.9,
        noise in 0.0..80.0,
    ) {
        let link = format!("https://{host}:{port}#pin={pin}&code={code}");
        let look = Look { turned, fills, aside, shades: [dark, dark + contrast], shadow, noise };
        let (_dir, app) = an_app();
        match reads(&app, &jpeg(photo(&fields(&shown(&link)), &look))) {
            Ok(read) => prop_assert_eq!(read, link),
            Err(said) => prop_assert_eq!(said.code, "no_square"),
        }
    }
}
