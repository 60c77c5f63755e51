/// Numbers that look random and are the same in every run (SplitMix64: Steele, Lea, Flood,
/// *Fast splittable pseudorandom number generators*, 2014).
#[derive(Clone, Debug)]
pub struct Noise(u64);

impl Noise {
    /// The same seed gives the same numbers.
    #[must_use]
    pub fn seeded(seed: u64) -> Noise {
        Noise(seed)
    }

    /// At least 0, below 1.
    pub fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^= z >> 31;
        // The 53 bits of a binary fraction.
        (z >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// At least `low`, below `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// Spread about nothing with this standard deviation (Box and Muller 1958).
    pub fn normal(&mut self, sigma: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.share()).ln()).sqrt();
        sigma * radius * (std::f64::consts::TAU * self.share()).cos()
    }
}
