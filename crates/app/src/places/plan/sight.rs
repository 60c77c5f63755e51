//! Marks on a photo of a gable end, and the slope that they are booked as.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::parts::solved_job;
use crate::places::plan::slopes;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::kinds::{EndKind, GableMark, GableSpot, PitchRead, TiltFelt};
use eavebook_core::book::names::end_of;
use eavebook_core::sight::{Camera, GableEnd, Mark, PhoneTurn, Spot, sight, up_in_picture};
use eavebook_store::Store;
use uuid::Uuid;

/// What was marked for one face.
pub struct Marked {
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// Entry of the photo.
    pub photo: Uuid,
    /// Points across and down the picture.
    pub size: [u32; 2],
    /// What was marked where.
    pub marks: Vec<GableMark>,
    /// Slopes booked before it.
    pub after: u32,
}

/// How far the top of a gable may lie off the middle of its eaves, as a share of its width, where both
/// sides are built alike (judged).
/// One standard deviation.
const TOP_OFF_MIDDLE: f64 = 0.01;

/// Works out the slope of the face beside a gable end from marks on a photo of that end, and books
/// it with the marks.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoSuchPhoto`, `NoGableBeside`, `NoGableWidth`, `SightError`.
pub fn pitch(book: &mut Store, job: Uuid, marked: &Marked) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(marked.leg)?;
    let photos = opened.book.photos.iter();
    let taken = photos
        .into_iter()
        .find(|(entry, _)| *entry == marked.photo)
        .map(|(_, taken)| taken)
        .ok_or(RequestRefusal::NoSuchPhoto)?;
    let [width_px, height_px] = marked.size.map(f64::from);
    let camera = Camera {
        width_px,
        height_px,
        // What the page takes off the camera says nothing of its lens.
        focal_35: None,
        up: taken.tilt.map(up),
    };
    let marks: Vec<Mark> = marked
        .marks
        .iter()
        .map(|mark| Mark {
            at: [mark.at[0] * width_px, mark.at[1] * height_px],
            of: spot(mark.of),
        })
        .collect();
    let told = sight(&camera, &gable(&opened, marked.leg)?.house(), &marks);
    let told = told.map_err(RequestRefusal::SightError)?;
    let hundredths = |degrees: f64| (degrees * 100.0).round() / 100.0;
    let reading = told.reading();
    let read = PitchRead::Sighted {
        degrees: hundredths(told.pitch.value.angle().in_degrees()),
        sigma: hundredths(reading.sigma.map_or(0.0, |sigma| sigma.in_degrees())),
        photo: marked.photo,
        marks: marked.marks.clone(),
    };
    let since = opened.book.pitches.iter().skip(marked.after as usize);
    let mut mine = since.filter(|pitch| pitch.device == opened.device);
    if !mine.any(|pitch| pitch.leg == marked.leg && pitch.read == read) {
        slopes::book_pitch(&opened, book, marked.leg, read)?;
    }
    Ok(Answer::Job(job))
}

fn spot(of: GableSpot) -> Spot {
    match of {
        GableSpot::LeftEave => Spot::Eave(0),
        GableSpot::RightEave => Spot::Eave(1),
        GableSpot::Top => Spot::Peak(0),
        GableSpot::LeftGround => Spot::Foot(0),
        GableSpot::RightGround => Spot::Foot(1),
    }
}

/// Up in the axes of the picture: the vertical in those of the phone is the last row of its turn
/// (W3C Device Orientation, section 4.1).
fn up(felt: TiltFelt) -> [f64; 3] {
    let (beta, gamma) = (felt.beta.to_radians(), felt.gamma.to_radians());
    let vertical = [
        -beta.cos() * gamma.sin(),
        beta.sin(),
        beta.cos() * gamma.cos(),
    ];
    // A screen that shows its picture turned a quarter clockwise stands with its top to the left.
    let held = match felt.screen.rem_euclid(360.0) {
        turned if turned < 45.0 => PhoneTurn::Upright,
        turned if turned < 135.0 => PhoneTurn::TopLeft,
        turned if turned < 225.0 => PhoneTurn::UpsideDown,
        turned if turned < 315.0 => PhoneTurn::TopRight,
        _ => PhoneTurn::Upright,
    };
    up_in_picture(vertical, held)
}

/// The gable end beside a face, by the leg under it.
fn gable(opened: &OpenJob, leg: u32) -> Result<GableEnd, Refusal> {
    let laid = opened.laid_out();
    let legs = u32::try_from(laid.legs).unwrap_or(u32::MAX).max(1);
    let beside = [leg % legs + 1, (leg + legs - 2) % legs + 1];
    let is_gable = |leg: &u32| end_of(&opened.book, *leg) == EndKind::Gable;
    let under = beside.into_iter().find(is_gable);
    let under = under.ok_or(RequestRefusal::NoGableBeside)?;
    let solved = solved_job::solve(&laid);
    let outline = solved
        .as_ref()
        .and_then(|solved| solved.bodies.first())
        .map(|body| &body.outline);
    let figure = outline.and_then(|outline| outline.legs.get(under as usize - 1));
    let width = figure.and_then(|leg| leg.length);
    let width = width.ok_or(RequestRefusal::NoGableWidth { leg: under })?;
    Ok(GableEnd {
        width,
        top_off_middle: width.value * TOP_OFF_MIDDLE,
    })
}
