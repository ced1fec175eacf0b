//! How many tests passed and failed, read from the runners' own summaries.
//!
//! What it is: a sum of what cargo test and node's test runner print. What it is not: a verdict; exit codes decide.

#[derive(Clone, Copy, Default, PartialEq, Eq, Debug)]
pub struct Counts {
    pub passed: usize,
    pub failed: usize,
}

impl Counts {
    /// Adds a line's numbers when it is a runner's summary.
    pub fn read_line(&mut self, line: &str) {
        let line = line.trim();
        if let Some(numbers) = line.strip_prefix("test result: ") {
            let number = |word: &str| {
                let part = numbers.split([';', '.']).find(|part| part.trim_end().ends_with(word))?;
                part.trim().split(' ').next()?.parse().ok()
            };
            self.passed += number("passed").unwrap_or(0);
            self.failed += number("failed").unwrap_or(0);
        } else if let Some(rest) = line.strip_prefix("# ").or_else(|| line.strip_prefix("ℹ ")) {
            let Some((word, number)) = rest.split_once(' ') else { return };
            let Ok(number) = number.parse::<usize>() else { return };
            match word {
                "pass" => self.passed += number,
                "fail" | "cancelled" => self.failed += number,
                _ => {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn summaries_add_up_and_other_lines_do_not_count() {
        let mut counts = Counts::default();
        for line in [
            "running 3 tests",
            "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.01s",
            "test result: FAILED. 1 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s",
            "ℹ tests 4",
            "ℹ pass 3",
            "ℹ fail 1",
            "# cancelled 1",
            "# passing by",
            "ℹ duration_ms 812.5",
        ] {
            counts.read_line(line);
        }
        assert_eq!(counts, Counts { passed: 16, failed: 4 });
    }
}
