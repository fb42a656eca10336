"""Words that stand in many golden reports: the caution, and the entries of the legends.

Each stands once in tests/golden, in caution.txt or legend.txt, behind a name. A golden report holds
⟦name⟧ in its place, and the lines that hold one are not broken: they are when the words are put
back, as the form of the report breaks them. So one changed word changes one file.
"""

import html
import re
import textwrap

NAME = re.compile("⟦([^⟧]*)⟧")
# What can stand between two words of a line that was broken, in any form.
BETWEEN_WORDS = r"(?: |\n *|&#10;|</text></g>\n<g [^>]*><text [^>]*>)"


def broken(text, columns):
    return textwrap.wrap(text, columns, break_long_words=False, break_on_hyphens=False)


class Plain:
    """A form that breaks no lines and takes words as they are."""

    # What is broken together: where it opens, and the text with names.
    paragraph = "()(⟦[^⟧]*⟧)"
    escape = unescape = staticmethod(str)

    def lines(self, opening, text):
        return opening + self.escape(text)


class Markdown(Plain):
    escape = staticmethod(lambda text: re.sub("[>^~]", r"\\\g<0>", text))
    unescape = staticmethod(lambda text: text.replace("\\", ""))


class Markup(Plain):
    escape = staticmethod(lambda text: html.escape(text).replace("&#x27;", "&#39;"))
    unescape = staticmethod(html.unescape)


class Text(Plain):
    paragraph = "^([^⟦\n]*)(⟦.*)$"

    def __init__(self, columns):
        self.columns = columns

    def lines(self, opening, text):
        indent = len(opening)
        return opening + ("\n" + " " * indent).join(broken(text, self.columns - indent))


class Picture(Markup):
    paragraph = '((?:<g [^>]*>)?<text [^>]*>)(⟦[^<]*)(?=</text>)'

    def lines(self, opening, text):
        """Lines across the sheet, each with a place of its own."""
        begin, y, end = re.fullmatch(r'(.* y=")([0-9.]+)(".*>)', opening).groups()
        places = (f"{float(y) + 2.6 * i:.2f}".rstrip("0").rstrip(".") for i in range(len(text)))
        return "</text></g>\n".join(
            f"{begin}{place}{end}{self.escape(line)}"
            for place, line in zip(places, broken(text, 116)))


class Score(Markup):
    paragraph = "()([^>;\n]*⟦[^⟧]*⟧)"

    def lines(self, opening, text):
        return "&#10;".join(self.escape(line) for line in broken(text, 76))


def with_words(golden, form, words):
    """A golden report with the words in the place of their names: what should be printed."""
    def filled(paragraph):
        text = form.unescape(paragraph[2])
        return form.lines(
            paragraph[1], NAME.sub(lambda name: words.get(name[1], name[0]), text))
    return re.sub(form.paragraph, filled, golden, flags=re.MULTILINE)


def anywhere(text, form):
    """A pattern of words that can have been broken into lines."""
    return BETWEEN_WORDS.join(map(re.escape, form.escape(text).split(" ")))


def with_names(report, form, words):
    """A report as it stands in tests/golden; of words within words the longer have the name."""
    for name, text in sorted(words.items(), key=lambda item: len(item[1]), reverse=True):
        report = re.sub(anywhere(text, form), f"⟦{name}⟧", report)
    return re.sub(";\n +⟦", "; ⟦", report)


def words_in(report, golden, form, words):
    """What a report says where the golden one holds names, which can be other words than these.

    Empty where the two differ in anything else, for then no place is certain.
    """
    pieces = NAME.split(golden)
    names = pieces[1::2]
    pieces[::2] = [re.escape(piece).replace(r";\ ", ";" + BETWEEN_WORDS) for piece in pieces[::2]]
    pieces[1::2] = [f"({anywhere(words.get(name, name), form)}|.+?)" for name in names]
    found = re.fullmatch("".join(pieces), report, re.DOTALL)
    texts = found.groups() if found else ()
    return {name: form.unescape(re.sub(BETWEEN_WORDS, " ", text))
            for name, text in zip(names, texts) if name in words}
