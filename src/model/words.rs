//! Closed lists of words that stand in the journal as text.

/// An enum whose variants are words of the journal. What another version wrote, and this one does not know, stays what it was:
/// `Other`. Words behind `|` are older spellings, which are read and never written.
macro_rules! words {
    ($(#[$about:meta])* $Name:ident { $($(#[$of:meta])* $Word:ident = $word:literal $(| $older:literal)*,)+ }) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $Name {
            $($(#[$of])* $Word,)+
            /// What another version wrote.
            Other(String),
        }

        impl $Name {
            /// As it is written.
            #[must_use]
            pub fn as_str(&self) -> &str {
                match self {
                    $(Self::$Word => $word,)+
                    Self::Other(word) => word,
                }
            }
        }

        impl From<&str> for $Name {
            fn from(word: &str) -> Self {
                match word {
                    $($word $(| $older)* => Self::$Word,)+
                    other => Self::Other(other.to_owned()),
                }
            }
        }

        impl From<String> for $Name {
            fn from(word: String) -> Self {
                Self::from(word.as_str())
            }
        }

        impl From<$Name> for String {
            fn from(word: $Name) -> Self {
                word.as_str().to_owned()
            }
        }

        impl std::ops::Deref for $Name {
            type Target = str;

            fn deref(&self) -> &str {
                self.as_str()
            }
        }

        impl std::fmt::Display for $Name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.pad(self.as_str())
            }
        }

        impl PartialEq<str> for $Name {
            fn eq(&self, other: &str) -> bool {
                self.as_str() == other
            }
        }

        impl PartialEq<&str> for $Name {
            fn eq(&self, other: &&str) -> bool {
                self.as_str() == *other
            }
        }

        impl serde::Serialize for $Name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(self.as_str())
            }
        }

        impl<'de> serde::Deserialize<'de> for $Name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                std::borrow::Cow::<'de, str>::deserialize(from).map(|word| Self::from(&*word))
            }
        }

        impl schemars::JsonSchema for $Name {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> std::borrow::Cow<'static, str> {
                String::schema_name()
            }

            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                String::json_schema(generator)
            }
        }
    };
}

pub(crate) use words;
