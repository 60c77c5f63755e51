//! The papers, each for its reader: what stands on it, before it is set.

mod changes;
mod crew;
mod order;
mod permit;
mod photos;
mod proposal;
mod story;

use crate::edition::{Edition, Lang, PaperKind};
use crate::job::{Freeze, Job};
use crate::leaf::{Block, Foot, Leaf, Set, Table};
use crate::named::Parts;
use crate::not_known::NotKnown;
use crate::said::{self, PhotoRow};
use crate::words::{self, either};
use eavebook_core::roof::EdgeKind;
use eavebook_core::units::Length;

/// All that the papers are written from.
pub struct PaperInput<'a> {
    pub job: &'a Job<'a>,
    pub parts: &'a Parts<'a>,
    pub edition: Edition,
    pub freeze: &'a Freeze,
    pub photos: &'a [PhotoRow],
    pub not_known: &'a [NotKnown],
    pub digest: &'a str,
}

/// One paper.
pub fn leaf(kind: PaperKind, lang: Lang, told: &PaperInput) -> Leaf {
    match kind {
        PaperKind::Proposal => proposal::leaf(told),
        PaperKind::Crew => crew::leaf(told, lang),
        PaperKind::Order => order::leaf(told),
        PaperKind::Permit => permit::leaf(told),
        PaperKind::Photos => photos::leaf(told),
        PaperKind::Story => story::leaf(told),
        PaperKind::Changes => changes::leaf(told),
    }
}

/// Whether there is anything for a paper to say of a job.
pub fn is_called_for(kind: PaperKind, job: &Job) -> bool {
    match kind {
        PaperKind::Changes => !job.book.changes.is_empty(),
        PaperKind::Proposal
        | PaperKind::Crew
        | PaperKind::Order
        | PaperKind::Permit
        | PaperKind::Photos
        | PaperKind::Story => true,
    }
}

/// Whether money stands on a paper on which it may.
pub fn shows_money(kind: PaperKind, job: &Job) -> bool {
    match kind {
        PaperKind::Changes => job
            .book
            .changes
            .iter()
            .any(|noted| noted.what.each.is_some()),
        PaperKind::Proposal
        | PaperKind::Crew
        | PaperKind::Order
        | PaperKind::Permit
        | PaperKind::Photos
        | PaperKind::Story => job.price.is_some(),
    }
}

/// What a paper is called in the list.
pub fn title(kind: PaperKind, lang: Lang) -> &'static str {
    match (kind, lang) {
        (PaperKind::Proposal, _) => "Proposal",
        (PaperKind::Crew, Lang::En) => "Crew sheet",
        (PaperKind::Crew, Lang::Es) => "Hoja de la cuadrilla",
        (PaperKind::Order, _) => "Order list",
        (PaperKind::Permit, _) => "Permit sheet",
        (PaperKind::Photos, _) => "Photo sheet",
        (PaperKind::Story, _) => "Measurement record",
        (PaperKind::Changes, _) => "Changes found",
    }
}

impl PaperInput<'_> {
    /// A paper with its sentence and its foot, nothing on it yet.
    fn begin(&self, kind: PaperKind, lang: Lang, opening: String) -> Leaf {
        let edition = match lang {
            Lang::En => format!("version {}, {} edition", self.freeze.version, self.edition),
            Lang::Es => format!("versión {}, edición {}", self.freeze.version, self.edition),
        };
        let mut leaf = Leaf {
            kind,
            lang,
            title: title(kind, lang).to_owned(),
            opening,
            blocks: Vec::new(),
            foot: Foot {
                job: self.job.book.address.clone(),
                version: edition,
                page: either(lang, "page", "página").to_owned(),
                of: either(lang, "of", "de").to_owned(),
                digest: self.digest.chars().take(12).collect(),
            },
        };
        if self.job.book.pretend {
            leaf.blocks.push(Block::Caution {
                text: either(
                    lang,
                    "A pretend house: nothing here is of a real place.",
                    "Una casa inventada: nada de esto es de un lugar real.",
                )
                .to_owned(),
            });
        }
        leaf
    }

    /// The plan with what it shows in words.
    fn plan(&self, lang: Lang) -> Block {
        Block::Plan {
            alt: self.plan_alt(lang),
        }
    }

    fn plan_alt(&self, lang: Lang) -> String {
        let address = &self.job.book.address;
        let (faces, edges) = (self.parts.faces.len(), self.parts.edges.len());
        match lang {
            Lang::En => format!(
                "Plan of {address}, the front at the foot: {}, {}. The tables list each with its figures.",
                words::counted(faces, "face", "faces"),
                words::counted(edges, "edge", "edges")
            ),
            Lang::Es => format!(
                "Plano de {address}, el frente abajo: {}, {}. Las tablas dan cada una con sus medidas.",
                words::counted(faces, "cara", "caras"),
                words::counted(edges, "orilla", "orillas")
            ),
        }
    }

    /// The faces with their pitch and area.
    fn faces(&self, lang: Lang) -> Option<Block> {
        let mut table = Table::with(&[
            (either(lang, "Face", "Cara"), Set::Wide),
            (either(lang, "Pitch", "Pendiente"), Set::Figures),
            (either(lang, "Area", "Área"), Set::Figures),
        ]);
        for named in &self.parts.faces {
            table.row(vec![
                words::face(named, lang),
                words::pitch_give_or_take(named.face.pitch, named.pitch_sigma, lang),
                words::area_give_or_take(named.area, lang),
            ]);
        }
        (!table.rows.is_empty()).then_some(Block::Table(table))
    }

    /// Edges by kind, all of a kind together.
    fn lengths_by_kind(&self, lang: Lang) -> Option<Block> {
        let totals = &self.job.solved?.totals;
        let mut table = Table::with(&[
            (either(lang, "Edges", "Orillas"), Set::Wide),
            (either(lang, "Length", "Largo"), Set::Figures),
        ]);
        for (kind, length) in &totals.edges {
            let sigma = self.parts.sigma_by_kind.get(kind).copied();
            table.row(vec![
                words::edge_kind(Some(*kind), lang).to_owned(),
                words::length_give_or_take(*length, sigma, lang),
            ]);
        }
        (!table.rows.is_empty()).then_some(Block::Table(table))
    }

    /// Each edge by its name on the plan.
    fn each_edge(&self, lang: Lang) -> Option<Block> {
        let mut table = Table::with(&[
            (either(lang, "Edge", "Orilla"), Set::Figures),
            (either(lang, "Kind", "Tipo"), Set::Words),
            (either(lang, "Length", "Largo"), Set::Figures),
            (either(lang, "Faces along it", "Caras"), Set::Wide),
        ]);
        for edge in &self.parts.edges {
            let length = edge
                .length
                .map(|length| words::length_give_or_take(length, edge.sigma, lang));
            let mut kind = words::edge_kind(edge.kind, lang).to_owned();
            if edge.worked_out {
                kind.push_str(either(lang, ", worked out", ", calculado"));
            }
            table.row(vec![
                edge.name.clone(),
                kind,
                length.unwrap_or_else(|| either(lang, "not known", "no se sabe").to_owned()),
                words::faces_along(edge, &self.parts.faces, lang),
            ]);
        }
        (!table.rows.is_empty()).then_some(Block::Table(table))
    }

    /// The area in a sentence; what is missing where there is none.
    fn area(&self, lang: Lang) -> String {
        let totals = self.job.solved.map(|solved| &solved.totals);
        match (totals.and_then(|totals| totals.area), lang) {
            (Some(area), Lang::En) => format!(
                "The roof is {}, about {}. The ± is one standard deviation: about two times in three the true figure lies within it.",
                words::area_give_or_take(area, lang),
                words::squares(area.value, lang)
            ),
            (Some(area), Lang::Es) => format!(
                "El techo mide {}, como {}.",
                words::area_give_or_take(area, lang),
                words::squares(area.value, lang)
            ),
            (None, Lang::En) => {
                "The area of the roof is not known yet: what is not known stands below.".to_owned()
            }
            (None, Lang::Es) => {
                "Todavía no se sabe el área del techo: lo que falta está abajo.".to_owned()
            }
        }
    }

    /// What stands out of the roof.
    fn items(&self, lang: Lang) -> Option<Block> {
        let mut table = Table::with(&[
            (either(lang, "What", "Qué"), Set::Words),
            (either(lang, "Size", "Medida"), Set::Figures),
            (either(lang, "On face", "En la cara"), Set::Words),
            (either(lang, "Seen", "Visto"), Set::Wide),
        ]);
        for item in said::items(self.job, self.parts) {
            let what = words::capital(words::item(item.kind, lang));
            let size = item.size.map(|size| words::in_lang(&size, lang));
            let face = item.face.map(|face| words::face(face, lang));
            let saddle = item.saddle.map(|seen| words::saddle(seen, lang));
            table.row(vec![
                format!("{what} {}", item.number),
                size.unwrap_or_else(|| either(lang, "not read", "no se midió").to_owned()),
                face.unwrap_or_else(|| either(lang, "on no face", "en ninguna").to_owned()),
                saddle.unwrap_or("–").to_owned(),
            ]);
        }
        (!table.rows.is_empty()).then_some(Block::Table(table))
    }

    /// What lies on the roof and what it is nailed to.
    fn deck_and_layers(&self, lang: Lang) -> Vec<String> {
        let survey = self.job.laid.survey.as_ref();
        let not_known = either(lang, "not known", "no se sabe").to_owned();
        let deck = survey.and_then(|survey| survey.deck.as_ref());
        let covering = survey.and_then(|survey| survey.covering.as_ref());
        let deck_kind = deck.and_then(|deck| deck.kind.clone());
        let planks = deck.and_then(|deck| Some((deck.plank_width?, deck.gap)));
        let planks = planks.map(|(width, gap)| {
            let inches = |length: Length| ((length.in_inches() * 8.0).round() / 8.0).to_string();
            let gap = gap.map_or_else(|| not_known.clone(), inches);
            match lang {
                Lang::En => format!(", {} in wide, gaps {gap} in", inches(width)),
                Lang::Es => format!(", {} pulg de ancho, separación {gap} pulg", inches(width)),
            }
        });
        let layers = covering.and_then(|covering| covering.layers);
        let layers = layers.map_or_else(|| not_known.clone(), |layers| layers.to_string());
        let kind = covering.and_then(|covering| covering.kind.clone());
        vec![
            format!(
                "{}: {}{}",
                either(lang, "Deck", "Madera de base"),
                deck_kind.map_or_else(|| not_known.clone(), |kind| words::deck(&kind, lang)),
                planks.unwrap_or_default()
            ),
            format!(
                "{}: {}",
                either(lang, "Covering there now", "Material que hay"),
                kind.unwrap_or(not_known)
            ),
            format!("{}: {layers}", either(lang, "Layers", "Capas")),
        ]
    }

    /// What is not known, as it stands in the list.
    fn not_known(&self, lang: Lang) -> Vec<Block> {
        let items: Vec<String> = self
            .not_known
            .iter()
            .map(|one| words::capital(&one.say(lang)))
            .collect();
        if items.is_empty() {
            Vec::new()
        } else {
            vec![Block::List { items }]
        }
    }

    /// Whether the roof has edges of a kind.
    fn has(&self, kind: EdgeKind) -> bool {
        self.parts.edges.iter().any(|edge| edge.kind == Some(kind))
    }
}

/// `$1,234.50`, for a paper on which money may stand.
fn money(amount: eavebook_core::units::Money) -> String {
    amount.words()
}

/// A caution block.
fn caution(text: impl Into<String>) -> Block {
    Block::Caution { text: text.into() }
}
