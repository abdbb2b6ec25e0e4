//! One test binary: folders by subject.
