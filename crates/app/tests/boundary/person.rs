//! A person with a tape and the app, at one house.

use eavebook_app::App;
use eavebook_app::demo::keys;
use eavebook_app::reply::{FaceView, JobView, PadView, Reply, ThingView, TodayView};
use eavebook_app::request::{FieldBookRequest, Key, PlanRequest, Request, TodayRequest};
use eavebook_core::book::kinds::{PitchRead, TapeMarks, Thing, Turn};
use tempfile::TempDir;
use uuid::Uuid;

pub struct Person {
    dir: TempDir,
    app: Option<App>,
    pub job: Uuid,
}

pub const ADDRESS: &str = "7 Invented Street";

impl Person {
    /// Somebody with a new book who began a job.
    pub fn begins() -> Person {
        let dir = tempfile::tempdir().unwrap();
        let app = Some(App::open(dir.path()).unwrap());
        let mut person = Person {
            dir,
            app,
            job: Uuid::nil(),
        };
        person.job = person
            .asks(TodayRequest::StartJob {
                address: ADDRESS.to_owned(),
            })
            .job;
        person
    }

    pub fn app(&self) -> &App {
        self.app.as_ref().unwrap()
    }

    pub fn says(&self, request: impl Into<Request>) -> Reply {
        self.app().handle(request)
    }

    /// Asks for something that gives a job.
    pub fn asks(&self, request: impl Into<Request>) -> Box<JobView> {
        match self.says(request) {
            Reply::Job(job) => job,
            other => panic!("{other:?}"),
        }
    }

    /// Asks for something that is refused, and gives the sentence.
    pub fn is_refused(&self, request: impl Into<Request>) -> String {
        match self.says(request) {
            Reply::Refused(said) => said.en,
            other => panic!("{other:?}"),
        }
    }

    pub fn looks(&self) -> Box<JobView> {
        self.asks(TodayRequest::Job { job: self.job })
    }

    pub fn today(&self) -> TodayView {
        match self.says(TodayRequest::Today) {
            Reply::Today(today) => today,
            other => panic!("{other:?}"),
        }
    }

    pub fn searches(&self, words: &str) -> TodayView {
        match self.says(TodayRequest::Search {
            words: words.to_owned(),
        }) {
            Reply::Today(today) => today,
            other => panic!("{other:?}"),
        }
    }

    /// Opens the keypad for a leg.
    pub fn opens(&self, leg: u32) -> Box<JobView> {
        self.asks(FieldBookRequest::OpenPad {
            job: self.job,
            thing: Some(Thing::Leg { leg }),
            blind: false,
        })
    }

    pub fn opens_blind(&self, leg: u32) -> Box<JobView> {
        self.asks(FieldBookRequest::OpenPad {
            job: self.job,
            thing: Some(Thing::Leg { leg }),
            blind: true,
        })
    }

    /// Presses one key as the screen does: with the count that the last reply gave.
    pub fn presses(&self, key: Key) -> Reply {
        let press = self.looks().pad.open.map_or(0, |open| open.press);
        self.says(FieldBookRequest::Press {
            job: self.job,
            press,
            key,
            since_ms: None,
        })
    }

    /// Types a tape text on the open keypad.
    pub fn types(&self, text: &str) -> PadView {
        for key in keys(text, TapeMarks::FeetInches) {
            match self.presses(key) {
                Reply::Pad(pad) if pad.refused.is_none() => {}
                other => panic!("{other:?}"),
            }
        }
        self.looks().pad
    }

    /// Opens the keypad, types and books.
    pub fn reads(&self, leg: u32, text: &str) -> Box<JobView> {
        self.opens(leg);
        self.types(text);
        self.books()
    }

    pub fn reads_blind(&self, leg: u32, text: &str) -> Box<JobView> {
        self.opens_blind(leg);
        self.types(text);
        self.books()
    }

    pub fn books(&self) -> Box<JobView> {
        match self.presses(Key::BookIt) {
            Reply::Job(job) => job,
            other => panic!("{other:?}"),
        }
    }

    pub fn turns(&self, after_leg: u32, turn: Turn) -> Box<JobView> {
        self.asks(FieldBookRequest::Corner {
            job: self.job,
            after_leg,
            turn,
        })
    }

    /// Walks legs in order: `"40'_3\" out 20' out 40' out 20'"`; a last corner may be left out.
    pub fn walks(&self, walk: &str) -> Box<JobView> {
        let mut leg = 0;
        for word in walk.split(' ') {
            match word {
                "out" => self.turns(leg, Turn::Outside),
                "in" => self.turns(leg, Turn::Inside),
                text => {
                    leg += 1;
                    self.reads(leg, &text.replace('_', " "))
                }
            };
        }
        self.looks()
    }

    pub fn slopes(&self, leg: u32, in_12: f64) -> Box<JobView> {
        let read = PitchRead::Number { in_12 };
        self.asks(PlanRequest::Pitch {
            job: self.job,
            leg,
            read,
        })
    }

    pub fn strikes(&self, entry: Uuid) -> Box<JobView> {
        self.asks(FieldBookRequest::Strike {
            job: self.job,
            entry,
            reason: None,
        })
    }

    pub fn undoes(&self) -> Box<JobView> {
        let entry = self.looks().undo.unwrap().entry;
        self.asks(FieldBookRequest::Undo {
            job: self.job,
            entry,
        })
    }

    pub fn redoes(&self) -> Box<JobView> {
        let entry = self.looks().redo.unwrap().entry;
        self.asks(FieldBookRequest::Redo {
            job: self.job,
            entry,
        })
    }

    /// The program ends and is opened again on the same book.
    pub fn starts_the_program_again(&mut self) {
        self.app = None;
        self.app = Some(App::open(self.dir.path()).unwrap());
    }

    pub fn dir(&self) -> &std::path::Path {
        self.dir.path()
    }
}

pub fn thing<'a>(job: &'a JobView, name: &str) -> &'a ThingView {
    job.readings
        .iter()
        .find(|thing| thing.thing == name)
        .unwrap()
}

pub fn leg(job: &JobView, number: u32) -> &ThingView {
    thing(job, &format!("leg {number}"))
}

pub fn value(thing: &ThingView) -> &str {
    thing.value.as_ref().map_or("", |value| &value.words)
}

pub fn face(job: &JobView, number: u32) -> &FaceView {
    job.faces.iter().find(|face| face.leg == number).unwrap()
}

pub fn total<'a>(job: &'a JobView, name: &str) -> (&'a str, &'a str) {
    let total = job.totals.iter().find(|total| total.name == name).unwrap();
    (
        &total.value.words,
        total.value.give_or_take.as_deref().unwrap_or(""),
    )
}
