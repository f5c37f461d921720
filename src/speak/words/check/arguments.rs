//! Which arguments a message asks for, and of what sort each is, read from its text.

use fluent_syntax::ast::{CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement, Variant, VariantKey};
use std::collections::BTreeMap;

#[derive(Debug, Clone, Copy, Default)]
struct Use {
    /// It stands in the text itself, not only as what chooses a form.
    said: bool,
    number: bool,
    digits: bool,
}

/// The arguments of one message.
#[derive(Debug, Clone, Default)]
pub(super) struct Arguments(BTreeMap<String, Use>);

impl Arguments {
    pub fn has(&self, name: &str) -> bool {
        self.0.contains_key(name)
    }

    pub fn all(&self) -> impl Iterator<Item = &String> {
        self.0.keys()
    }

    /// Those that stand in the text.
    pub fn said(&self) -> impl Iterator<Item = &String> {
        self.0.iter().filter(|(_, used)| used.said).map(|(name, _)| name)
    }

    pub fn is_number(&self, name: &str) -> bool {
        self.0.get(name).is_some_and(|used| used.number)
    }

    /// Some argument is a number.
    pub fn any_number(&self) -> bool {
        self.0.values().any(|used| used.number)
    }

    /// A telephone number.
    pub fn is_digits(&self, name: &str) -> bool {
        self.0.get(name).is_some_and(|used| used.digits)
    }

    fn pattern(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            if let PatternElement::Placeable { expression } = element {
                self.expression(expression);
            }
        }
    }

    fn expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.inline(inline, Use { said: true, ..Use::default() }),
            Expression::Select { selector, variants } => {
                self.inline(selector, Use { number: variants.iter().any(is_plural), ..Use::default() });
                variants.iter().for_each(|variant| self.pattern(&variant.value));
            }
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>, used: Use) {
        match inline {
            InlineExpression::VariableReference { id } => {
                let known = self.0.entry(id.name.to_owned()).or_default();
                known.said |= used.said;
                known.number |= used.number;
                known.digits |= used.digits;
            }
            InlineExpression::FunctionReference { id, arguments } => {
                let digits = id.name == "DIGITS";
                self.call(arguments, Use { number: !digits, digits, ..used });
            }
            InlineExpression::TermReference { arguments: Some(arguments), .. } => self.call(arguments, used),
            InlineExpression::Placeable { expression } => self.expression(expression),
            _ => {}
        }
    }

    fn call(&mut self, arguments: &CallArguments<&str>, used: Use) {
        arguments.positional.iter().for_each(|inline| self.inline(inline, used));
        arguments.named.iter().for_each(|named| self.inline(&named.value, used));
    }
}

fn is_plural(variant: &Variant<&str>) -> bool {
    match &variant.key {
        VariantKey::NumberLiteral { .. } => true,
        VariantKey::Identifier { name } => ["zero", "one", "two", "few", "many"].contains(name),
    }
}

/// Every message of a file with its arguments, its wordings taken together.
pub(super) fn arguments_of(text: &str) -> Vec<(String, Arguments)> {
    let resource = fluent_syntax::parser::parse(text).unwrap_or_else(|(resource, _)| resource);
    let messages = resource.body.iter().filter_map(|entry| if let Entry::Message(message) = entry { Some(message) } else { None });
    messages
        .map(|message| {
            let mut arguments = Arguments::default();
            message
                .value
                .iter()
                .chain(message.attributes.iter().map(|attribute| &attribute.value))
                .for_each(|pattern| arguments.pattern(pattern));
            (message.id.name.to_owned(), arguments)
        })
        .collect()
}
