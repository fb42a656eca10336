#include "fingering/terms.hpp"

namespace fingerturn {
namespace {

constexpr std::string_view kParncutt = "Parncutt and others 1997, from memory";
constexpr std::string_view kAdapted = "Parncutt and others 1997, from memory; adapted";
constexpr std::string_view kOurs = "our convention";
constexpr std::string_view kTrade = "common practice, no source";
constexpr std::string_view kPrinted = "what printed fingers have shown; our convention";

constexpr std::array<TermWords, kTermCount> kWords{{
    {"stretch", "semitones by which two fingers are beyond their comfortable span, at most 8",
     kParncutt},
    {"small-span", "semitones by which two fingers are below their relaxed span, at most 8",
     kAdapted},
    {"large-span", "semitones by which two fingers are above their relaxed span, at most 8",
     kAdapted},
    {"position-change-count",
     "over three single notes: 1 where the first and third finger are beyond their comfortable "
     "span, or one finger takes both keys; 2 where the thumb passes between them and the span is "
     "beyond the practical",
     kParncutt},
    {"position-change-size", "the semitones beyond the comfortable span there, at most 12",
     kParncutt},
    {"weak-finger", "finger 4 or 5; of several notes together the mean", kParncutt},
    {"three-four-five", "fingers 3, 4 and 5 one after another in any order", kParncutt},
    {"three-to-four", "3 and 4 one after the other", kAdapted},
    {"four-on-black", "3 on a white key and 4 on a black one, one after the other", kParncutt},
    {"thumb-on-black", "the thumb on a black key, and 3/4 more for each white neighbour", kAdapted},
    {"five-on-black", "1/2 for the fifth finger on a black key, and 1 for each white neighbour",
     kAdapted},
    {"thumb-passing",
     "the thumb passes or is passed: 1, or 3 where it is on a black key and the other on a white",
     kAdapted},
    {"third-finger", "finger 3; of several notes together the mean", kOurs},
    {"chord-span",
     "semitones by which two fingers that are down together are outside their relaxed span", kOurs},
    {"chord-beyond-practical", "two fingers that are down together outside their practical span",
     kOurs},
    {"same-finger", "one finger for two different keys, one after the other", kOurs},
    {"change-on-repeat", "another finger for a key that is struck again", kOurs},
    {"quick-repeat", "the same finger for a single key struck again after an eighth note or less",
     kOurs},
    {"quick-shift", "white keys that the hand moves, up to 4, within less than a quarter note",
     kOurs},
    {"slow-shift", "white keys that the hand moves, up to 4, in a quarter note or more", kOurs},
    {"far-shift", "white keys that the hand moves beyond 4", kOurs},
    {"fingers-cross", "two fingers that cross, neither of them the thumb", kOurs},
    {"change-while-held", "another finger for a key that is held or let go early", kOurs},
    {"finger-again", "one finger for two different keys, with one event between", kOurs},
    {"shift-over-two", "white keys that the hand moves over two steps, up to 8", kOurs},
    {"shift-over-rest", "white keys that the hand moves over a rest, up to 8", kOurs},
    {"quick-move", "the hand moves by more than 1/8 of a white key, in less than a quarter note",
     kOurs},
    {"slow-move", "the hand moves by more than 1/8 of a white key, in a quarter note or more",
     kOurs},
    {"off-triad", "other fingers than are usual in a triad of three keys that are struck together",
     kTrade},
    {"opening-finger",
     "the first finger after a rest; a number for each, by where the line goes on and the key's "
     "colour",
     kPrinted},
    {"finger-over-two",
     "the fingers of the first and third of three single notes; a number for each pair, by the "
     "interval and the colours of the keys",
     kPrinted},
    {"finger-in-chords",
     "the fingers of two keys, one after the other, where one is in a chord; a number for each "
     "pair, by the interval and the time between",
     kPrinted},
    {"off-handbook",
     "another finger than the handbook has in a whole scale or arpeggio; not in what is told",
     kOurs},
    {"off-figure", "another finger than is usual in a part of one; not in what is told", kOurs},
    {"off-printed",
     "another finger than is given to the same note of its group elsewhere; not in what is told",
     kOurs},
    {"off-repeat",
     "another finger than most places of its group have on this note, on the same key; not in "
     "what is told",
     kOurs},
    {"off-sequence",
     "another finger than most places of its group have on this note, on another key; not in "
     "what is told",
     kOurs},
    {"avoided-pair",
     "two fingers on different keys, one after the other, that the player wishes to avoid; not in "
     "what is told",
     kOurs},
}};

}  // namespace

std::span<const TermWords> term_words() noexcept { return kWords; }

}  // namespace fingerturn
