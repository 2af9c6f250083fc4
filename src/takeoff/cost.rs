//! What it costs: exact decimal money, rounded to cents once, at the end of each line.

use rust_decimal::{Decimal, RoundingStrategy};

/// One line of the bill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Priced {
    /// How many.
    pub count: u32,
    /// What one costs.
    pub each: Decimal,
}

/// The bill: materials, then markup on them, tax on both together, and labour, which is not taxed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bill {
    /// All lines.
    pub materials: Decimal,
    /// Markup, where told.
    pub markup: Decimal,
    /// Labour, where told.
    pub labour: Decimal,
    /// Tax, where told: on materials with their markup.
    pub tax: Decimal,
    /// The whole.
    pub total: Decimal,
}

/// Parts of a hundred told, and the work.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OnTop {
    /// Markup, per cent of materials.
    pub markup: Option<Decimal>,
    /// Tax, per cent.
    pub tax: Option<Decimal>,
    /// The work.
    pub labour: Option<Decimal>,
}

/// Adds a bill up. `None` on overflow.
pub fn bill(lines: &[Priced], on_top: OnTop) -> Option<Bill> {
    let line = |p: &Priced| Some(cents(p.each.checked_mul(Decimal::from(p.count))?));
    let materials = lines.iter().try_fold(Decimal::ZERO, |sum, p| sum.checked_add(line(p)?))?;
    let markup = part(materials, on_top.markup)?;
    let tax = part(materials.checked_add(markup)?, on_top.tax)?;
    let labour = on_top.labour.unwrap_or_default();
    let total = materials.checked_add(markup)?.checked_add(tax)?.checked_add(labour)?;
    Some(Bill { materials, markup, labour, tax, total })
}

fn part(of: Decimal, percent: Option<Decimal>) -> Option<Decimal> {
    Some(cents(of.checked_mul(percent.unwrap_or_default())?.checked_div(Decimal::ONE_HUNDRED)?))
}

/// Whole cents, half a cent up.
pub fn cents(money: Decimal) -> Decimal {
    let mut money = money.round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero);
    money.rescale(2);
    money
}

#[cfg(test)]
mod tests {
    use super::*;

    fn money(cents: i64) -> Decimal {
        Decimal::new(cents, 2)
    }

    /// 10 at 12.50 are 125.00; 20 % on that 25.00; tax of 6 % on both, 150.00, is 9.00, where on the
    /// materials alone it would be 7.50; labor of 100.00 is not taxed: 259.00.
    #[test]
    fn tax_is_on_materials_with_their_markup() {
        let percent = |n: i64| Some(Decimal::from(n));
        let on_top = OnTop { markup: percent(20), tax: percent(6), labour: Some(money(10_000)) };
        let bill = bill(&[Priced { count: 10, each: money(1_250) }], on_top).expect("small");
        assert_eq!((bill.materials, bill.markup, bill.tax), (money(12_500), money(2_500), money(900)));
        assert_eq!((bill.labour, bill.total), (money(10_000), money(25_900)));
    }
}
