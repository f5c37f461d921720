//! Serde's door to an enum whose variant is known from elsewhere: the kind from a column, the fields from the line.

use serde::de::value::StrDeserializer;
use serde::de::{DeserializeSeed, Deserializer, EnumAccess, Error as _, IntoDeserializer, VariantAccess, Visitor};
use serde::forward_to_deserialize_any;
use serde_json::Error;

/// A variant's name, and its fields as a JSON object, which may hold more than them.
pub(crate) struct KindAndBody<'a> {
    pub kind: &'a str,
    pub line: &'a str,
}

impl<'de> Deserializer<'de> for KindAndBody<'de> {
    type Error = Error;

    fn deserialize_enum<V: Visitor<'de>>(self, _: &'static str, _: &'static [&'static str], visitor: V) -> Result<V::Value, Error> {
        visitor.visit_enum(self)
    }

    fn deserialize_any<V: Visitor<'de>>(self, _: V) -> Result<V::Value, Error> {
        Err(Error::custom("only an enum can be read by its kind"))
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct newtype_struct seq
        tuple tuple_struct map struct identifier ignored_any
    }
}

impl<'de> EnumAccess<'de> for KindAndBody<'de> {
    type Error = Error;
    type Variant = Body<'de>;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Body<'de>), Error> {
        let kind: StrDeserializer<'_, Error> = self.kind.into_deserializer();
        Ok((seed.deserialize(kind)?, Body(self.line)))
    }
}

/// The fields.
pub(crate) struct Body<'a>(&'a str);

impl<'de> VariantAccess<'de> for Body<'de> {
    type Error = Error;

    fn struct_variant<V: Visitor<'de>>(self, fields: &'static [&'static str], visitor: V) -> Result<V::Value, Error> {
        let mut line = serde_json::Deserializer::from_str(self.0);
        let value = line.deserialize_struct("", fields, visitor)?;
        line.end()?;
        Ok(value)
    }

    fn unit_variant(self) -> Result<(), Error> {
        Ok(())
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Error> {
        seed.deserialize(&mut serde_json::Deserializer::from_str(self.0))
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, Error> {
        serde_json::Deserializer::from_str(self.0).deserialize_tuple(len, visitor)
    }
}
