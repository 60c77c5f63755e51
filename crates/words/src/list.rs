//! The macros by which an area lists its messages and a group its labels.

/// Lists the messages of one area: each with its fields and one sample or more.
///
/// A variant without a sample does not compile. Fields with a count have samples with 1 and 2.
/// The id of a variant is the area's name and its own in snake case: `closure.gap`.
macro_rules! messages {
    (
        $(#[$about:meta])*
        $name:ident, $area:literal;
        $(
            $(#[$doc:meta])*
            $variant:ident
            $( { $( $(#[$field_doc:meta])* $field:ident : $type:ty ),+ $(,)? }
               = $( { $( $sample_field:ident : $value:expr ),+ $(,)? } ),+ )?
            ;
        )+
    ) => {
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq)]
        pub enum $name {
            $(
                $(#[$doc])*
                $variant $( { $( $(#[$field_doc])* $field: $type, )+ } )?,
            )+
        }

        impl $name {
            /// The id of this message: `closure.gap`.
            #[must_use]
            pub fn id(&self) -> String {
                match self {
                    $( $name::$variant $( { $( $field: _, )+ } )? =>
                        $crate::list::id($area, stringify!($variant)), )+
                }
            }

            /// This message in a language.
            #[must_use]
            pub fn text(&self, language: $crate::Language) -> String {
                match language {
                    $crate::Language::English => super::en::text(self, &$crate::En),
                    $crate::Language::Spanish => super::es::text(self, &$crate::Es),
                }
            }

            /// One sample or more of each message.
            #[must_use]
            pub fn samples() -> Vec<$name> {
                [ $( messages!(@samples $name $variant
                    $( $( { $( $sample_field : $value ),+ } ),+ )? ) ),+ ].concat()
            }
        }
    };
    (@samples $name:ident $variant:ident) => {
        vec![$name::$variant]
    };
    (@samples $name:ident $variant:ident
        $( { $( $field:ident : $value:expr ),+ } ),+) => {
        vec![ $( $name::$variant { $( $field: $value ),+ } ),+ ]
    };
}

/// Lists the labels of one group: each a text without arguments. `heading` marks the title of a
/// place, a region or a paper, `sentence` a whole sentence; `= same` marks a label that may read
/// alike in both languages.
macro_rules! labels {
    (
        $(#[$about:meta])*
        $name:ident, $group:ident;
        $( $variant:ident $( : $kind:ident )? $( = $same:ident )? ; )+
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[expect(missing_docs, reason = "a label's text is its documentation")]
        pub enum $name {
            $( $variant, )+
        }

        impl $name {
            /// Every label of the group.
            pub const ALL: &'static [$name] = &[ $( $name::$variant, )+ ];

            /// The id of this label: `frame.undo`.
            #[must_use]
            pub fn id(self) -> String {
                match self {
                    $( $name::$variant => {
                        $crate::list::id(stringify!($group), stringify!($variant))
                    } )+
                }
            }

            /// This label in a language.
            #[must_use]
            pub const fn text(self, language: $crate::Language) -> &'static str {
                match language {
                    $crate::Language::English => super::en::$group::text(self),
                    $crate::Language::Spanish => super::es::$group::text(self),
                }
            }

            /// Whether it is a control's name, a title or a whole sentence.
            #[must_use]
            pub const fn kind(self) -> $crate::Kind {
                match self {
                    $( $name::$variant => labels!(@kind $( $kind )?), )+
                }
            }

            /// It may read alike in both languages.
            #[must_use]
            pub const fn may_be_same(self) -> bool {
                match self {
                    $( $name::$variant => labels!(@same $( $same )?), )+
                }
            }
        }
    };
    (@kind) => { $crate::Kind::Label };
    (@kind heading) => { $crate::Kind::Heading };
    (@kind sentence) => { $crate::Kind::Sentence };
    (@same) => { false };
    (@same same) => { true };
}

/// `closure.gap` from `closure` and `Gap`.
pub(crate) fn id(area: &str, variant: &str) -> String {
    let mut id = String::with_capacity(area.len() + variant.len() + 4);
    id.push_str(area);
    id.push('.');
    for (place, letter) in variant.chars().enumerate() {
        if letter.is_uppercase() && place > 0 {
            id.push('_');
        }
        id.extend(letter.to_lowercase());
    }
    id
}
