//! Packs, attempts, evidence, marks and reports of pinhole.
//!
//! | folder | subject |
//! |---|---|
//! | [`pack`] | packs, cars, jobs, drawings: read, checked, cross-referenced |
//! | [`diagram`], [`room`] | where things stand in the vacuum and wiring diagrams, and in the room |
//! | [`words`] | the command language of the text bench |
//! | [`attempt`] | the file of an attempt, and the mark in it |
//! | [`play`] | a workshop with its attempt: done, done by a script, done again |
//! | [`plan`] | tests of a car as work: what they need, share and cost |
//! | [`infer`] | what the readings say about the car: hypotheses, draws, likelihood, belief |
//! | [`planner`] | which tests to do, and what they take |
//! | [`marks`] | the scores and the sheet |
//! | [`prove`] | whether a job can be done, and not guessed |
//! | [`report`] | the sheet on paper and in the terminal |
//! | [`locale`] | sentences in the languages of the program |
//! | [`files`] | the one way in for files |
//! | [`speed`] | the cases of `pinhole bench` |

pub mod attempt;
pub mod diagram;
pub mod files;
pub mod infer;
pub mod locale;
pub mod marks;
pub mod pack;
pub mod plan;
pub mod planner;
pub mod play;
pub mod prove;
pub mod report;
pub mod room;
pub mod speed;
pub mod words;
