//! What is made of numbers, with one of each a lane.

/// Something made of numbers, one of each a lane.
pub trait Spread: Sized {
    /// The same of one circuit.
    type One;
    /// `one` in every lane.
    fn all_of(one: &Self::One) -> Self;
    /// Puts `one` into a lane.
    fn put_in(&mut self, lane: usize, one: &Self::One);
}

impl Spread for f64 {
    type One = f64;
    fn all_of(one: &f64) -> Self {
        *one
    }
    fn put_in(&mut self, _: usize, one: &f64) {
        *self = *one;
    }
}

impl<T: Spread> Spread for Vec<T> {
    type One = Vec<T::One>;
    fn all_of(one: &Self::One) -> Self {
        one.iter().map(T::all_of).collect()
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        for (all, one) in self.iter_mut().zip(one) {
            all.put_in(lane, one);
        }
    }
}

impl<T: Spread> Spread for Option<T> {
    type One = Option<T::One>;
    fn all_of(one: &Self::One) -> Self {
        one.as_ref().map(T::all_of)
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        if let (Some(all), Some(one)) = (self, one) {
            all.put_in(lane, one);
        }
    }
}

impl<T: Spread> Spread for [T; 2] {
    type One = [T::One; 2];
    fn all_of(one: &Self::One) -> Self {
        [T::all_of(&one[0]), T::all_of(&one[1])]
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        for (all, one) in self.iter_mut().zip(one) {
            all.put_in(lane, one);
        }
    }
}

/// Implements [`Spread`] for a struct over [`Real`] by its fields.
macro_rules! spread {
    ($name:ident { $($field:ident),* $(,)? }) => {
        impl<R: $crate::lanes::Real> $crate::lanes::Spread for $name<R> {
            type One = $name;
            fn all_of(one: &$name) -> Self {
                Self { $( $field: $crate::lanes::Spread::all_of(&one.$field), )* }
            }
            fn put_in(&mut self, lane: usize, one: &$name) {
                $( $crate::lanes::Spread::put_in(&mut self.$field, lane, &one.$field); )*
            }
        }
    };
}
pub(crate) use spread;
