#pragma once

#include "fingerturn/diagnostic_code.hpp"

#include <array>
#include <string_view>

namespace fingerturn {

/// All codes, in the order of their ids. A message needs its use and an entry here.
inline constexpr std::array kDiagnosticCodes = std::to_array<DiagnosticCode>({
    {.id = "accidental",
     .in_notation = Severity::error,
     .title = "More than one accidental",
     .meaning = "A note has one accidental, and here a second one follows.",
     .cure = "Write one of #, b, ##, x, bb and n behind the letter, as in F#5 or Ebb4.",
     .example = "C#b4:1"},
    {.id = "bar-length",
     .in_notation = Severity::warning,
     .title = "A bar that does not add up",
     .meaning = "The note values of this bar do not fill the meter, or overfill it. The notes are "
                "taken as they are written. The first and the last bar of a hand may be short, and "
                "so may those beside a repeat sign or a double bar.",
     .cure = "Look for a note value that was forgotten or for a missing bar line; where the meter "
             "changes, say so in a line such as meter: 3/4.",
     .example = "meter: 2/4\n1/4 C4:1 D:2 | E:3 | D:2 C:1"},
    {.id = "bar-order",
     .in_notation = Severity::error,
     .title = "Bar numbers that do not rise",
     .meaning =
         "A line such as bar: 12 numbers the next bar, and that number is not above the bars "
         "that are there already.",
     .cure = "Write a higher number, or begin a passage of its own for bars that come again.",
     .example = "C4:1 | D:2 |\nbar: 2\nE:3"},
    {.id = "control-character",
     .in_notation = Severity::error,
     .title = "A character that is no text",
     .meaning = "The file holds a character that acts instead of being shown, such as a mark that "
                "turns the direction of a line, as files do that were damaged, copied from a page "
                "or belong to another program.",
     .cure = "Type the place anew, or have the other program write plain text."},
    {.id = "digits",
     .in_notation = Severity::warning,
     .title = "Fingers where octaves stand",
     .meaning = "The number right behind a letter is its octave. Here most notes are further apart "
                "than an octave and none has a finger, so the numbers look like fingers. They are "
                "read as octaves.",
     .cure = "Write fingers after a colon; the octave may be left out after the first note: C4:1 "
             "D:2 E:3. Where the leaps are meant, all is well.",
     .example = "C4 D2 E3 F1 G2"},
    {.id = "encoding",
     .in_musicxml = Severity::error,
     .title = "Letters in another encoding",
     .meaning = "The score says that its letters are encoded in a way that is not read here.",
     .cure = "Have your notation program write the score as UTF-8."},
    {.id = "finger-range",
     .in_notation = Severity::error,
     .in_musicxml = Severity::warning,
     .title = "A finger that is none",
     .meaning = "Fingers count from 1, the thumb, to 5, the fifth. A typed passage with another "
                "number is not analysed; in a score the number is passed over, and what turns on "
                "the finger stays undetermined.",
     .cure = "Correct the number. In a passage one digit stands after the colon, 4>1 is a silent "
             "change, and :? a finger that is not known.",
     .example = "C4:1 D:6"},
    {.id = "fingering",
     .in_musicxml = Severity::warning,
     .title = "A fingering without a number",
     .meaning =
         "Where the score has a fingering there is a text that names no finger. It is passed "
         "over.",
     .cure =
         "Give the note a number from 1 to 5 in your notation program, and write other texts as "
         "what they are. A silent change is written 4-1."},
    {.id = "fingering-count",
     .in_musicxml = Severity::warning,
     .title = "Stacked fingers that do not fit their chord",
     .meaning = "Several fingers stand on the first note of a chord, neither one for each of its "
                "notes nor marked as a silent change. As nobody can tell whose they are, the chord "
                "is read without fingers.",
     .cure = "Give each note of the chord its finger, or mark a silent change as a substitution."},
    {.id = "hand",
     .in_notation = Severity::error,
     .title = "A hand that is none",
     .meaning = "A line that begins with hand: says whose notes follow, right or left.",
     .cure = "Write hand: right or hand: left. Where both hands play, begin their lines with RH: "
             "and LH: instead.",
     .example = "hand: both\nC4:1"},
    {.id = "hand-place",
     .in_notation = Severity::error,
     .title = "A hand within a line",
     .meaning = "RH: and LH: stand at the beginning of a line, since a line belongs to one hand.",
     .cure = "Begin a new line for the other hand.",
     .example = "RH: C5:1 D:2 LH: C3:1"},
    {.id = "header",
     .in_notation = Severity::error,
     .title = "A header line with an unknown name",
     .meaning =
         "A line that begins with a name and a colon is a header line, and this name is none "
         "that is known.",
     .cure = "Use passage, composer, source, hand, meter, tempo, key, bar, reach or note; lines of "
             "notes may "
             "begin with RH: or LH:. A remark goes after a hash.",
     .example = "tmepo: 60\nC4:1"},
    {.id = "key",
     .in_notation = Severity::error,
     .title = "A key that is none",
     .meaning = "A key is a tonic with major or minor, of at most seven sharps or flats, or the "
                "number of its signs.",
     .cure = "Write it as in key: D major, key: Bb minor, key: 2 sharps, key: 1 flat or key: none.",
     .example = "key: D\nC4:1"},
    {.id = "meter",
     .in_notation = Severity::error,
     .title = "A meter that is none",
     .meaning =
         "A meter is a number of beats from 1 to 99, a stroke and the value of a beat: 1, 2, "
         "4, 8, 16, 32, 64 or 128.",
     .cure = "Write it in numbers, as in meter: 4/4 for common time or meter: 2/2 for cut time.",
     .example = "meter: 4\nC4:1"},
    {.id = "musicxml",
     .in_musicxml = Severity::error,
     .title = "XML that is no score",
     .meaning = "The file is XML, as scores are, but holds something else.",
     .cure = "Export the piece as MusicXML from your notation program. Of a collection give the "
             "scores in it."},
    {.id = "musicxml-chord",
     .in_musicxml = Severity::warning,
     .title = "A note of a chord without its chord",
     .meaning =
         "A note is marked as one of a chord, which is struck with the note right before it, "
         "and there is none: a rest, a backup or a forward stands there, or the measure "
         "begins. It is struck when the note or rest before it in the measure begins, or is "
         "read as a note of its own where there is none.",
     .cure = "Have your notation program write the score anew; where the file was edited by hand, "
             "put the note behind those it sounds with."},
    {.id = "musicxml-duration",
     .in_musicxml = Severity::warning,
     .title = "A note that takes no time",
     .meaning = "The duration of a note is 0 or below, though it is no grace note. How long it is "
                "can be told by its type, such as an eighth, and its dots.",
     .cure = "Have your notation program write the score anew; where the file was edited by hand, "
             "look at the element that is marked.",
     .outcome = "its type counts instead"},
    {.id = "musicxml-part",
     .in_musicxml = Severity::error,
     .title = "A part that is not there",
     .meaning = "A part was asked for by its number, and the score has no music under that number.",
     .cure = "Count the parts from 1 in the order of the score, or leave the number out: the parts "
             "for a keyboard are then found by themselves."},
    {.id = "musicxml-pitch",
     .in_musicxml = Severity::warning,
     .title = "A pitch that is no key of the piano",
     .meaning = "A note of the score has no pitch, one between two keys, or one beyond A0 and C8. "
                "The rest is read without it.",
     .cure = "Correct the note in your notation program. If its part is not for a piano, choose "
             "another with --part.",
     .outcome = "the note is left out"},
    {.id = "musicxml-time",
     .in_musicxml = Severity::error,
     .title = "A length that cannot be counted",
     .meaning =
         "A duration in the score is no number, or is longer than any bar, or its unit is too "
         "fine to be counted exactly. So nobody can say when the notes after it begin.",
     .cure = "Have your notation program write the score anew; where the file was edited by hand, "
             "look at the element that is marked."},
    {.id = "mxl",
     .in_musicxml = Severity::error,
     .title = "A packed score that cannot be opened",
     .meaning =
         "A file that ends in .mxl is a packed score. This one is damaged, has a password, or "
         "does not say which score it holds.",
     .cure = "Export the score again, or as text that ends in .musicxml."},
    {.id = "no-notes",
     .in_notation = Severity::warning,
     .in_musicxml = Severity::warning,
     .title = "Nothing to play",
     .meaning = "A passage, or the whole file, holds no note that a hand strikes.",
     .cure =
         "Look whether the right file was given, and whether notes stand in lines that begin "
         "with a hash. Of a score only the parts for a keyboard are read; --part takes another.",
     .example = "passage: Lantern Street"},
    {.id = "not-notation",
     .in_notation = Severity::error,
     .title = "XML in the place of a passage",
     .meaning = "A text that begins with < is XML, and it was to be read as a typed passage.",
     .cure = "Read it as a score. The program itself tells the two apart.",
     .example = "<score-partwise/>"},
    {.id = "not-utf8",
     .in_notation = Severity::error,
     .title = "Text that is not UTF-8",
     .meaning = "Passages are text in UTF-8, and these bytes are none.",
     .cure = "Save the file as UTF-8, which every editor can do."},
    {.id = "note",
     .in_notation = Severity::error,
     .title = "A note that is none",
     .meaning = "Here a note should stand, a letter from A to G first. The H of German names is B, "
                "and their B is Bb.",
     .cure =
         "Write letter, octave and finger, as in C4:1 or Bb3:2; join the notes of a chord by +, "
         "as in C4:1+E4:3; put ^ right before a grace note, as in ^D5:3.",
     .example = "C4:1 H:2"},
    {.id = "note-end",
     .in_notation = Severity::error,
     .title = "Something behind a note",
     .meaning = "The note is complete, and something follows that belongs to no note.",
     .cure =
         "Put a blank between two notes. The finger stands before the tie, as in C4:1~; a silent "
         "change is 4>1; a suggested finger is :2?.",
     .example = "C4:1D:2"},
    {.id = "note-value",
     .in_notation = Severity::error,
     .title = "A note value that is none",
     .meaning =
         "A word that begins with a digit is the value of the notes after it, as a part of a "
         "whole note.",
     .cure =
         "Write 1/4 for a quarter, 1/8. for a dotted eighth, 1/8t for one of a triplet, 1/1 for "
         "a whole note.",
     .example = "4 C4:1"},
    {.id = "number",
     .in_notation = Severity::error,
     .title = "A number that does not fit",
     .meaning =
         "After bar: stands the number of a bar, from 0 to 999999999, and bars are counted no "
         "further; after reach: the widest interval that 1 and 5 take comfortably, from 7 to "
         "24 semitones.",
     .cure = "Write the number alone, as in bar: 12 or reach: 14.",
     .example = "reach: an octave\nC4:1"},
    {.id = "octave",
     .in_notation = Severity::error,
     .title = "A first note without its octave",
     .meaning = "A note without an octave lies nearest to the note before it, and the first of a "
                "hand has none before it.",
     .cure = "Give the first note of each hand its octave; C4 is middle C.",
     .example = "C:1 D:2"},
    {.id = "octave-side",
     .in_notation = Severity::warning,
     .title = "An octave that the fingers contradict",
     .meaning = "Where the octave is left out, the nearest note of the letter is taken. Here it "
                "lies on the other side of the note before it than the fingers do, and the next "
                "octave would lie in the hand. Asked once in a bar and hand.",
     .cure = "Write the octave of this note; then nothing is asked.",
     .example = "hand: left\nC3:5 G:1"},
    {.id = "ornament",
     .in_notation = Severity::error,
     .title = "A trill or tremolo on nothing",
     .meaning = "The signs tr and trem belong to the note before them, and here none is struck.",
     .cure = "Write the sign behind its note, as in D5:3 tr.",
     .example = "r tr C4:1"},
    {.id = "pitch-range",
     .in_notation = Severity::error,
     .title = "A note off the piano",
     .meaning = "The piano has the keys from A0 to C8, and this note is none of them.",
     .cure = "Correct the octave; C4 is middle C, and its number changes between B and C.",
     .example = "C9:1"},
    {.id = "repeated-header",
     .in_notation = Severity::warning,
     .title = "A header line given twice",
     .meaning = "Composer, source and reach are said once in a passage. The last one holds.",
     .cure =
         "Take the other one out. If a new piece begins here, begin it with a line passage: and "
         "its title.",
     .example = "reach: 12\nreach: 14\nC4:1",
     .outcome = "this one counts"},
    {.id = "rest",
     .in_notation = Severity::error,
     .title = "A rest with something on it",
     .meaning = "A rest is the letter r alone. It has no finger, and lasts as long as the notes "
                "before it.",
     .cure = "Write the value before it, as in 1/4 r.",
     .example = "1/8 C4:1 r4"},
    {.id = "same-finger",
     .in_notation = Severity::warning,
     .title = "A silent change to the same finger",
     .meaning =
         "The finger that should take over is the one that is on the key already. It is read "
         "as it stands.",
     .cure = "Write the other finger, or leave the change out.",
     .example = "C4:4>4"},
    {.id = "same-key",
     .in_notation = Severity::warning,
     .title = "One key twice in a chord",
     .meaning = "Two notes of a chord are the same key, which a hand can strike once only.",
     .cure = "Take one of them out, or correct its octave.",
     .example = "C4:1+E4:3+C4:5",
     .outcome = "the first counts"},
    {.id = "sign",
     .in_notation = Severity::warning,
     .title = "A letter again without its sign",
     .meaning = "A sharp, flat or natural holds for its own note only, and here the letter comes "
                "again in the same bar and octave without one. In print the sign would hold on.",
     .cure = "Write the sign again, or n for a natural, as in Fn4; both end the question.",
     .example = "F#4:2 G:3 F:2"},
    {.id = "tempo",
     .in_notation = Severity::error,
     .title = "A tempo that is none",
     .meaning = "A tempo is a number of notes a minute, from 1 to 2000.",
     .cure = "Write quarter notes a minute, as in tempo: 72, or name the note, as in tempo: 1/8 = "
             "144.",
     .example = "tempo: fast\nC4:1"},
    {.id = "tie-to-nothing",
     .in_notation = Severity::warning,
     .in_musicxml = Severity::warning,
     .title = "A tie that leads to nothing",
     .meaning =
         "A note is tied, but the same key does not come again in that hand before a rest or "
         "the end. The tie has no effect.",
     .cure =
         "Take the tie out, or write the note that it leads to. Two names of one key, such as F# "
         "and Gb, are the same key.",
     .example = "1/4 C4:1~ D:2"},
    {.id = "time",
     .in_notation = Severity::error,
     .title = "Note values that cannot be added up",
     .meaning = "The note values of a passage are so many different fractions that the time of its "
                "notes cannot be counted exactly.",
     .cure = "Use plainer fractions, or divide the passage."},
    {.id = "too-large",
     .in_notation = Severity::error,
     .in_musicxml = Severity::error,
     .title = "A file too large to be read",
     .meaning = "A file of passages may have 16 MiB and a score 128 MiB; a packed score may not be "
                "many times larger than its container. A score for more than 999 keyboards is "
                "refused as well.",
     .cure =
         "Divide the passages among several files. A score of such a size is hardly one of piano "
         "music: look whether the file is what it should be."},
    {.id = "two-hands",
     .in_notation = Severity::warning,
     .title = "Hands whose bars differ",
     .meaning = "Bars of the same number stand together, and here one hand has more bars than the "
                "other, or a bar is longer in one hand. The first such bar is told.",
     .cure =
         "Look for a bar line, a note value or a rest that is missing; a bar in which a hand is "
         "silent takes a rest.",
     .example = "RH: 1/4 C5:1 D:2\nLH: 1/4 C3:5"},
    {.id = "xml",
     .in_musicxml = Severity::error,
     .title = "XML that is not well formed",
     .meaning = "The score is cut off or damaged, so that it cannot be read as XML at all.",
     .cure = "Export it again; where it was edited by hand, look at the place that is marked and "
             "just before it."},
});

/// A code of the table by its id. Another word does not compile.
class KnownCode {
 public:
  /// Takes the word as it is, so that a reader says no more than that.
  consteval KnownCode(const char* id) : code_(&entry_of(id)) {}
  [[nodiscard]] constexpr const DiagnosticCode& entry() const noexcept { return *code_; }

 private:
  static consteval const DiagnosticCode& entry_of(std::string_view id) {
    for (const DiagnosticCode& code : kDiagnosticCodes) {
      if (code.id == id) return code;
    }
    throw "there is no such code";  // which makes this no constant
  }

  const DiagnosticCode* code_;
};

}  // namespace fingerturn
