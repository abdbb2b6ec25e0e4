//! One test binary: folders by subject.
mod marks;
