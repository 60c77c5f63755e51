use crate::{Count, Noun};

messages! {
    /// Sentences of the order list and of the tear-off.
    OrderMessage, "order";
    /// What the columns of quantities mean.
    NeededAndSpare;
    /// There is no takeoff yet.
    NoQuantities;
    /// Weight and loads of what is torn off, at 50, 10 and 90 %.
    TearOff {
        /// At 50 %.
        pounds: f64,
        /// At 10 %.
        low_pounds: f64,
        /// At 90 %.
        high_pounds: f64,
        /// At 50 %.
        loads: f64,
        /// At 10 %.
        low_loads: f64,
        /// At 90 %.
        high_loads: f64,
        /// Whole loads to plan for.
        plan_for: Count,
    } = {
        pounds: 5931.0,
        low_pounds: 5389.0,
        high_pounds: 6528.0,
        loads: 0.9,
        low_loads: 0.8,
        high_loads: 1.0,
        plan_for: Count::new(1, Noun::Load),
    },
        {
            pounds: 5931.0,
            low_pounds: 5389.0,
            high_pounds: 6528.0,
            loads: 1.2,
            low_loads: 1.1,
            high_loads: 1.3,
            plan_for: Count::new(2, Noun::Load),
        };
}
