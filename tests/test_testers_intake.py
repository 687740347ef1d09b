"""What testers send is read whatever its shape and its words, and what cannot be matched is told."""

from __future__ import annotations

import io

import pytest
from testers_help import HAT, counts, reviewed


def told(review: object) -> list[tuple[str, str]]:
    """Where and what of everything that was not matched."""
    return [(str(one.place), one.what) for one in review.unmatched]


SAME = [
    ("Mia", "M", "CROWN", "Rnd 3", 21),
    ("Mia", "M", "CROWN", "Rnd 4", 27),
]
TABLES = {
    "comma": "Tester,Size,Part,Row,Count\nMia,M,Crown,Rnd 3,21\nMia,M,Crown,Rnd 4,27\n",
    "other order and words": "Got;Round no.;Section;Name;Size made\n21;3;Crown;Mia;Medium\n27;4;Crown;Mia;Medium\n",
    "tabs": "Row\tStitch count\tTester\tWhich size did you make?\tPiece\nR3\t21\tMia\tmed\tCrown\nR4\t27\tMia\tmed\tCrown\n",
    "bars": "Row | Actual | Tester | Size | Part\nround three | 21 | Mia | 2nd size | crown\n4th rnd | 27 sts | Mia | M | crown\n",
    "a line for each tester": "Timestamp;Your name;Size;Crown Rnd 3: stitches?;How many stitches in Crown Rnd 4?\n1.2.;Mia;M;21;27\n",
    "a column for each tester": "Part,Row,Mia (M)\nCrown,3,21\nCrown,4,27\n",
    "a part as a heading between rows": "Row;Count;Tester;Size\nCrown;;;\n3;21;Mia;M\n4;27;Mia;M\n",
    "differences": "Row,Off by,Tester,Size,Part\n3,0,Mia,M,Crown\n4,-1,Mia,M,Crown\n",
    "head above the table": "Tester: Mia\nSize: M\n\nPart,Row,Count\nCrown,3,21\nCrown,4,27\n",
}


@pytest.mark.parametrize("shape", TABLES)
def test_tables_of_all_shapes_say_the_same(shape: str) -> None:
    """Columns are matched by what they hold, in any order and shape, with whatever parts the cells."""
    assert counts(reviewed(HAT, t_csv=TABLES[shape])) == SAME


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "cp1252"])
def test_encodings(encoding: str) -> None:
    """A spreadsheet program's encodings are read."""
    text = "Tester;Size;Part;Row;Count;Note\nZoë;M;Crown;3;21;très bien\n"
    review = reviewed(HAT, t_csv=text.encode(encoding))

    assert counts(review) == [("Zoë", "M", "CROWN", "Rnd 3", 21)]


LINES = {
    "Rnd 4 – I got 27 instead of 28, size M": 27,
    "Rnd 4 - 27": 27,
    "Rnd 4: 27 sts": 27,
    "R4 27": 27,
    "rnd 4 -> 27 (pattern says 28)": 27,
    "In round 4 I ended up with 27 stitches.": 27,
    "I got 27 in Rnd 4 instead of 28": 27,
    "27 sc in round four": 27,
    "4th round: 27/28": 27,
    "Round 4 should be 28 but I have 27": 27,
    "Rnd 4: 27, 28 expected": 27,
    "Rnd 4: one short": 27,
    "Rnd 4: 2 too many": 30,
    "Rnd 4 matches": 28,
    "Rnd 4 was ok too": 28,
    "Rnd 4 count off by 1 (27)": 27,
    "Rnd 4: -1": 27,
    "Rnd 4 is 2 more than stated": 30,
    "Rnd 4 - 27 stitches, where 28 are due": 27,
}
NO_COUNTS = [
    "Rnd 4 has 12 increases",
    "Rnd 4 took me 3 tries",
    "Rnd 4: I had 27 at first, then frogged and had 28",
    "Rnd 4 is off by 2",
    "Rnd 4 (page 3)",
    'Rnd 4: "2 sc in next sc" puzzled me',
    "In Rnd 4, which of the 2 sc is meant?",
]


@pytest.mark.parametrize("line", LINES)
def test_prose(line: str) -> None:
    """A line of a mail gives the row and the count, however it is worded."""
    review = reviewed(HAT, mia_eml=f"Size: M\n\nCrown:\n{line}\n")

    assert counts(review) == [("Mia", "M", "CROWN", "Rnd 4", LINES[line])]


@pytest.mark.parametrize("line", NO_COUNTS)
def test_figures_that_are_no_counts(line: str) -> None:
    """A line whose figure is not surely the row's count is a remark on the row, and no count is made of it."""
    review = reviewed(HAT, mia_eml=f"Size: M\n\nCrown:\n{line}\n")

    assert counts(review) == []
    assert [(remark.words, index) for remark, index in review.placement.remarks] == [(line, 3)]


def test_a_count_for_each_of_several_rows() -> None:
    """ "Rnds 3 & 4: 21, 28" are two counts; several rows in one line are read one by one."""
    review = reviewed(HAT, mia_eml="Size: M\nCrown:\nRnds 3 & 4: 21, 28\nRnd 5 28 / Rnd 6 27\n")

    assert {row: got for *_, row, got in counts(review)} == {"Rnd 3": 21, "Rnd 4": 28, "Rnd 5": 28, "Rnd 6": 27}


def test_runs_of_rows() -> None:
    """A count or an "all fine" for a run holds for each of its rows, but for those that are excepted."""
    review = reviewed(HAT, mia_eml="Size: M\nRnds 5-8 all fine except Rnd 7, where I had 29\n")

    assert {row: got for *_, row, got in counts(review)} == {"Rnd 5": 28, "Rnd 6": 28, "Rnd 7": 29, "Rnd 8": 28}


def test_several_figures_of_one_row() -> None:
    """ "8 dc, 4 ch-2 sps" are two counts, each in its unit."""
    square = "Square\nUS terms\nRnd 1: Ch 4, join with sl st to form a ring, ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 2 times more, join with sl st in top of ch-3. (8 dc, 4 ch-2 sps)\n"
    review = reviewed(square, mia_eml="Rnd 1: 8 dc, 3 ch-2 sps")

    assert [(one.unit, one.due.printed, one.got) for one in review.placement.placed] == [
        ("main", 8, 8),
        ("space:2", 4, 3),
    ]


def test_mail_names_tester_and_size() -> None:
    """A mail's sender and its lines say whose counts they are; a second tester may follow."""
    review = reviewed(
        HAT,
        mails_txt="From: Mia Moth <mia@example.org>\nSize: M\nCrown, Rnd 3: 21\n\nTester: Bea (L)\nCrown, Rnd 3: 24\n",
    )

    assert [(who, size, got) for who, size, _, _, got in counts(review)] == [("Mia Moth", "M", 21), ("Bea", "L", 24)]


def test_pasted_table_between_prose() -> None:
    """A table that was pasted into a mail is read as one, and the lines around it as prose."""
    mail = "Hello!\nSize: S\n\nRnd    Part    Count\n3      Crown   18\n4      Crown   24\n\nBrim, Rnd 1: 30\n"
    review = reviewed(HAT, mia_eml=mail)

    assert [(part, row, got) for *_, part, row, got in counts(review)] == [
        ("CROWN", "Rnd 3", 18),
        ("CROWN", "Rnd 4", 24),
        ("BRIM", "Rnd 1", 30),
    ]


@pytest.mark.parametrize(
    ("said", "size"),
    [("M", "M"), ("medium", "M"), ("Size M", "M"), ("2nd size", "M"), ("2", "M"), ("lrg", "L"), ("small", "S")],
)
def test_sizes_by_name_and_place(said: str, size: str) -> None:
    """A size is known by its name, a common word for it, or its place."""
    review = reviewed(HAT, t_csv=f"Tester,Size,Part,Row,Count\nMia,{said},Crown,3,21\n")

    assert [found for _, found, *_ in counts(review)] == [size]


@pytest.mark.parametrize(
    ("said", "part"),
    [("Left Sleeve", "LEFT SLEEVE"), ("L slv", "LEFT SLEEVE"), ("rt sleeve", "RIGHT SLEEVE"), ("bk", "BACK")],
)
def test_parts_by_short_names(said: str, part: str) -> None:
    """A part is known by its name or short for it."""
    rows = "Row 1: Ch 11, sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    pattern = f"Jacket\nUS terms\n\nBACK\n{rows}\nLEFT SLEEVE\n{rows}\nRIGHT SLEEVE\n{rows}"
    review = reviewed(pattern, t_csv=f"Tester,Part,Row,Count\nMia,{said},1,10\n")

    assert [found for _, _, found, *_ in counts(review)] == [part]


UNMATCHED = {
    "Tester,Size,Part,Row,Count,Mood\nMia,M,Crown,3,21,grey\n": ("t.csv, cell F1", "the column “Mood”"),
    "Tester,Size,Part,Row,Count\nMia,XXL,Crown,3,21\n": ("t.csv, cell E2", "the size “XXL”"),
    "Tester,Part,Row,Count\nMia,Crown,3,21\n": ("t.csv, cell D2", "“21”"),
    "Tester,Size,Part,Row,Count\nMia,M,Cuff,3,21\n": ("t.csv, cell E2", "“3” in “21”"),
    "Tester,Size,Part,Row,Count\nMia,M,Crown,30,21\n": ("t.csv, cell E2", "“30” in “21”"),
    "Tester,Size,Row,Count\nMia,M,2,14\n": ("t.csv, cell D2", "“2” in “14”"),  # Crown or Brim?
    "Tester,Size,Part,Row,Count\nMia,M,Crown,3,2x1\n": ("t.csv, cell E2", "“2x1”"),
    "Tester,Size,Part,Row,Count\nMia,M,Crown,3,21,x\n": ("t.csv, cell F2", "“x”"),
}


@pytest.mark.parametrize("text", UNMATCHED)
def test_what_cannot_be_matched_is_told(text: str) -> None:
    """What has no known meaning, no row or no size is told with its place, and no count is guessed."""
    review = reviewed(HAT, t_csv=text)

    assert told(review) == [UNMATCHED[text]]


def test_cells_of_an_unknown_column_are_kept() -> None:
    """The cells under a heading that was not matched are kept as notes on their rows."""
    review = reviewed(HAT, t_csv="Tester,Size,Part,Row,Count,Mood\nMia,M,Crown,3,21,grey\n")

    assert [(remark.words, index) for remark, index in review.placement.remarks] == [("Mood: grey", 2)]


def test_every_line_of_a_mail_is_kept() -> None:
    """A line that says nothing that is known is a note."""
    review = reviewed(HAT, mia_eml="Size: M\nThe cat sat on it twice.\n")

    assert [(point.kind, point.remarks[0].words) for point in review.points if point.remarks] == [
        ("note", "The cat sat on it twice.")
    ]


def test_a_row_counted_twice_is_told() -> None:
    """Two counts of one tester for one row: the later is taken, and both are told."""
    review = reviewed(HAT, mia_eml="Size: M\nCrown, Rnd 3: 20\nCrown, Rnd 3: 21\n")

    assert [got for *_, got in counts(review)] == [21]
    assert [(where, what) for where, what in told(review)] == [("mia.eml, line 2", "Rnd 3: 20")]


def test_counts_in_the_words_of_a_cell() -> None:
    """A form's free answer that tells of rows and counts is read as the sentences it is."""
    answer = "Crown Rnd 3: 20, not 21; Crown Rnd 4: I had 27"
    review = reviewed(
        HAT,
        t_csv=f'Name,Size,"Any rounds where your count was off?"\nMia,M,"{answer}"\n'.replace(
            "Any rounds where your count was off?", "Stitch count"
        ),
    )

    assert [(row, got) for *_, row, got in counts(review)] == [("Rnd 3", 20), ("Rnd 4", 27)]


def test_cells_left_blank_below() -> None:
    """As in merged cells, a tester, a size and a part hold for the rows below, until another is named."""
    table = "Tester;Size;Part;Row;Count\nMia;M;Crown;3;21\n;;;4;28\n;;Brim;1;35\nBea;S;Crown;3;18\n"
    review = reviewed(HAT, t_csv=table)

    assert [(who, size, part, row) for who, size, part, row, _ in counts(review)] == [
        ("Mia", "M", "CROWN", "Rnd 3"),
        ("Mia", "M", "CROWN", "Rnd 4"),
        ("Mia", "M", "BRIM", "Rnd 1"),
        ("Bea", "S", "CROWN", "Rnd 3"),
    ]


def test_a_size_left_blank_is_not_the_last_testers() -> None:
    """A second tester who leaves the size blank has not said it."""
    review = reviewed(HAT, t_csv="Tester;Size;Part;Row;Count\nMia;M;Crown;3;21\nBea;;Crown;3;21\n")

    assert [who for who, *_ in counts(review)] == ["Mia"]
    assert "which size Bea made" in review.unmatched[0].why


@pytest.mark.parametrize("said", ["Crown R3", "R3 (crown)", "Rnd 3 of the crown"])
def test_part_beside_the_row(said: str) -> None:
    """A part may be named beside the row, in the same cell."""
    review = reviewed(HAT, t_csv=f"Tester,Size,Row,Count\nMia,M,{said},21\n")

    assert counts(review) == [("Mia", "M", "CROWN", "Rnd 3", 21)]


@pytest.mark.parametrize("name", ["t_csv", "t_eml"])
def test_a_text_that_is_no_line_of_a_report_is_told(name: str) -> None:
    """A line or cell far longer than any is told and not read, and the rest is."""
    row = "M;Crown;3;21" if name == "t_csv" else "Crown Rnd 3: 21"
    head = "Size;Part;Row;Count;Note\n" if name == "t_csv" else "Size: M\n"
    review = reviewed(
        HAT, **{name: f"{head}{row}\n" + ("M;Crown;4;28;" if name == "t_csv" else "") + "x" * 5000 + "\n"}
    )

    assert ("CROWN", "Rnd 3", 21) in [(part, row, got) for *_, part, row, got in counts(review)]
    assert [what for _, what in told(review)] == ["a text of 5,000 characters"]


class TestMails:
    """Mails as programs save them."""

    HEAD = "From: Mia Moth <mia@example.org>\nSubject: counts\nMIME-Version: 1.0\n"

    def test_html(self) -> None:
        """An HTML mail is read by its paragraphs and its table."""
        body = "<p>Size: M</p><table><tr><th>Rnd</th><th>Part</th><th>Count</th></tr><tr><td>3</td><td>Crown</td><td>21</td></tr></table><p>Crown, Rnd 4: 27 &amp; that=E2=80=99s all</p>"
        mail = f"{self.HEAD}Content-Type: text/html; charset=utf-8\nContent-Transfer-Encoding: quoted-printable\n\n{body}\n"
        review = reviewed(HAT, m_eml=mail)

        assert counts(review) == [("Mia Moth", "M", "CROWN", "Rnd 3", 21), ("Mia Moth", "M", "CROWN", "Rnd 4", 27)]

    def test_attachment(self) -> None:
        """A table that is attached is read as the sender's."""
        parts = (
            "--b\nContent-Type: text/plain\n\nSize: M\nCounts attached.\n"
            '--b\nContent-Type: text/csv\nContent-Disposition: attachment; filename="counts.csv"\n\nPart,Row,Count\nCrown,3,21\n--b--\n'
        )
        review = reviewed(HAT, m_eml=f'{self.HEAD}Content-Type: multipart/mixed; boundary="b"\n\n{parts}')

        assert counts(review) == [("Mia Moth", "M", "CROWN", "Rnd 3", 21)]
        assert "counts.csv" in str(review.placement.placed[0].claim.place)

    def test_quoted_lines_are_not_the_testers(self) -> None:
        """Lines of the mail that was answered are another's words; they are told and not read."""
        review = reviewed(HAT, mia_eml="Size: M\nCrown, Rnd 3: 21\n> Crown, Rnd 3: 99\n> Rnd 4: 99\n")

        assert [got for *_, got in counts(review)] == [21]
        assert told(review) == [("mia.eml, line 3", "2 quoted lines")]


class TestSpreadsheets:
    """XLSX."""

    def workbook(self, *lines: tuple) -> bytes:
        """A workbook with one sheet of these lines."""
        from openpyxl import Workbook

        book, out = Workbook(), io.BytesIO()
        book.active.title = "Counts"
        for line in lines:
            book.active.append(line)
        book.save(out)
        return out.getvalue()

    def test_cells(self) -> None:
        """Numbers and texts of a sheet are read, and places name sheet and cell."""
        raw = self.workbook(("Tester", "Size", "Part", "Row", "Count"), ("Mia", "M", "Crown", 3, 20.0))
        review = reviewed(HAT, t_xlsx=raw)

        assert counts(review) == [("Mia", "M", "CROWN", "Rnd 3", 20)]
        assert str(review.placement.placed[0].claim.place) == "t.xlsx, sheet Counts, cell E2"

    def test_a_formula_without_its_value_is_told(self) -> None:
        """A formula whose value the file does not hold is told, not passed over."""
        raw = self.workbook(("Tester", "Size", "Part", "Row", "Count"), ("Mia", "M", "Crown", 3, "=20+1"))

        assert told(reviewed(HAT, t_xlsx=raw)) == [("t.xlsx, sheet Counts, cell E2", "a formula")]

    def test_a_broken_file_is_told_and_the_others_are_read(self) -> None:
        """A file that is no spreadsheet leaves the other reports as they are."""
        review = reviewed(HAT, bad_xlsx=b"PK\x03\x04nothing", t_csv=TABLES["comma"])

        assert [name for name, _ in review.intake.unread] == ["bad.xlsx"]
        assert counts(review) == SAME


class TestWordsOfWholeReports:
    """What a report says once holds for all of it, wherever it stands."""

    def test_size_told_in_a_sentence(self) -> None:
        """ "I made the medium" is the size of the counts before and after it."""
        mail = "Rnd 1: 7\nI made the medium. Rnd 2: 14\nRnd 3: 21\n"

        assert [(size, got) for _, size, _, _, got in counts(reviewed(HAT, mia_eml=f"Crown\n{mail}"))] == [
            ("M", 7), ("M", 14), ("M", 21),
        ]  # fmt: skip

    @pytest.mark.parametrize("words", ["I tested size L!", "Making the large one", "I did a size large, with love"])
    def test_size_in_other_words(self, words: str) -> None:
        """The size that was made, in the words of different testers."""
        assert {size for _, size, *_ in counts(reviewed(HAT, mia_eml=f"{words}\nCrown Rnd 1: 8\n"))} == {"L"}

    def test_a_small_mistake_is_no_size(self) -> None:
        """A word that could be a size and is none."""
        found = reviewed(HAT, mia_eml="Size: L\nI made a small mistake at first.\nCrown Rnd 1: 8\n")

        assert {size for _, size, *_ in counts(found)} == {"L"}

    def test_up_to_a_row(self) -> None:
        """All was as printed up to a row: the rows before it, too."""
        found = reviewed(HAT, mia_eml="Size M\nCrown\nEverything matched up to rnd 3 but in Rnd 4 I got 27, not 28.\n")

        assert [(row, got) for *_, row, got in counts(found)] == [
            ("Rnd 1", 7),
            ("Rnd 2", 14),
            ("Rnd 3", 21),
            ("Rnd 4", 27),
        ]

    def test_one_tester_by_two_names(self) -> None:
        """What stands before a file says whose it is belongs to the one tester it names."""
        found = reviewed(HAT, report_csv="Size,M\nName,Mia Moth\n\nPart,Rnd,Count\nCrown,1,7\nCrown,2,14\n")

        assert {claim.who.tester for claim in found.intake.claims} == {"Mia Moth"}

    def test_name_under_a_mail(self) -> None:
        """A mail that is signed says nothing more by it."""
        found = reviewed(HAT, mia_eml="From: Mia Moth <mia@example.org>\n\nSize M\nCrown Rnd 1: 7\n\nMia\n")

        assert not [claim for claim in found.intake.claims if getattr(claim, "kind", "") == "note"]

    def test_a_list_of_all_rows_of_a_part(self) -> None:
        """Rows 1 to 8 in one list can only be those of the part that has eight."""
        found = reviewed(
            HAT, mia_eml="Size M\n" + "".join(f"Rnd {n}: {c}\n" for n, c in {1: 7, 2: 14, 3: 21, 8: 28}.items())
        )

        assert {part for _, _, part, _, _ in counts(found)} == {"CROWN"}

    def test_a_list_of_two_parts(self) -> None:
        """Rows 1 and 2 might be those of either part, after a list that begins anew: neither is chosen."""
        found = reviewed(HAT, mia_eml="Size M\nRnd 1: 7\nRnd 2: 14\n")

        assert counts(found) == []
        assert all("which is meant is not said" in one.why for one in found.placement.unmatched)


class TestTablesThatAreMoreThanTables:
    """Nothing that stands in a table's file is dropped in silence."""

    def test_columns_for_sizes(self) -> None:
        """A column of counts for each size, whose heading says it beside "count"."""
        table = (
            "row\tsize S count\tCount (L)\ttester\nCrown Rnd 1\t6\t8\tCarol\nCrown Rnd 2\t\t15 instead of 16\tCarol\n"
        )

        assert counts(reviewed(HAT, carol_tsv=table)) == [
            ("Carol", "S", "CROWN", "Rnd 1", 6), ("Carol", "L", "CROWN", "Rnd 1", 8), ("Carol", "L", "CROWN", "Rnd 2", 15),
        ]  # fmt: skip

    def test_yarn_and_gauge_below_the_table(self) -> None:
        """Lines below the rows are read as what they say, though they stand in the table's columns."""
        table = "Size,M,\n,,\nPart,Rnd,Count\nCrown,1,7\nGauge,15 sts x 17 rows,\nYarn used,131 g,\nHook,4,\nLovely to make,,\n"
        found = reviewed(HAT, mia_csv=table)
        kinds = [type(claim).__name__ for claim in found.intake.claims]

        assert kinds == ["Counted", "GaugeGot", "YarnUsed", "GaugeGot", "Remark"]
        assert (found.together.gauges[0].stitches, found.together.gauges[0].got.hook_mm) == (15, 4.0)
        assert found.together.yarn[0].more

    def test_yarn_straight_below_a_pasted_table(self) -> None:
        """ "yarn: 131 g" without an empty line before it is no row."""
        found = reviewed(HAT, mia_txt="Size: M\nPart: Crown\n\nRow | Count\n----|-----\n1 | 7\nyarn: 131 g\n")

        assert [one.most for one in found.together.yarn] == [131]

    def test_rows_left_blank_say_nothing(self) -> None:
        """A form's line with its row, its printed count and no count is no remark."""
        found = reviewed(HAT, mia_csv="Size,Part,Rnd,Printed,Count\nM,Crown,1,7,7\nM,Crown,2,14,\n")

        assert [type(claim).__name__ for claim in found.intake.claims] == ["Counted"]
        assert found.intake.unmatched == ()

    def test_german_table(self) -> None:
        """Headings and numbers as a German tester writes them: 13,5 M, Reihe, gezählt."""
        table = (
            "Name;Anke Brandt;;;\nGröße;M;;;\n;;;;\nTeil;Runde;gedruckt;gezählt;Bemerkung\nCrown;1;7;7;\nCrown;Rd 2;14;13 statt 14;\n"
            "Crown;3;21;;\nMaschenprobe;15,5 M x 18,5 R;;;\nGarnverbrauch;131,5 g;;;\nHäkelnadel;4,5;;;\n"
        )
        found = reviewed(HAT, anke_csv=table)

        assert counts(found) == [("Anke Brandt", "M", "CROWN", "Rnd 1", 7), ("Anke Brandt", "M", "CROWN", "Rnd 2", 13)]
        assert (found.together.gauges[0].stitches, found.together.gauges[0].rows) == (15.5, 18.5)
        assert found.together.gauges[0].got.hook_mm == 4.5
        assert found.together.yarn[0].most == 131.5
        assert found.intake.unmatched == () and {type(one).__name__ for one in found.intake.claims} == {
            "Counted",
            "GaugeGot",
            "YarnUsed",
        }


class TestThreads:
    """Several testers in one text, each with the words of a chat or a forum."""

    THREAD = (
        "Maple wrote:\nSize M\nCrown R1 7, R2 14, R3 21, R4 28 all good!\nBrim R1 - 35. R2 - 34, pattern says 35??\n\n"
        "Juniper wrote:\nSize M\nCrown: as printed until rnd 3, then 27 in Rnd 4 (not 28)\n\n"
        "Tester: Alder\nSize M\nCROWN\n3) 21\n4) 26 sts\n"
    )

    def test_every_tester_keeps_the_own_counts(self) -> None:
        """Who wrote what is told by the lines between them."""
        assert counts(reviewed(HAT, thread_txt=self.THREAD)) == [
            *(("Maple", "M", "CROWN", f"Rnd {n}", c) for n, c in {1: 7, 2: 14, 3: 21, 4: 28}.items()),
            ("Maple", "M", "BRIM", "Rnd 1", 35), ("Maple", "M", "BRIM", "Rnd 2", 34),
            *(("Juniper", "M", "CROWN", f"Rnd {n}", c) for n, c in {1: 7, 2: 14, 3: 21, 4: 27}.items()),
            ("Alder", "M", "CROWN", "Rnd 3", 21), ("Alder", "M", "CROWN", "Rnd 4", 26),
        ]  # fmt: skip

    def test_name_that_is_no_part_ends_the_part(self) -> None:
        """Counts under a heading that is not known are not put on the part before it."""
        found = reviewed(HAT, mia_txt="Size M\nCrown:\nRnd 3: 21\nEars:\nRnd 1: 5\n")

        assert [(part, row) for _, _, part, row, _ in counts(found)] == [("CROWN", "Rnd 3")]
        assert ("mia.txt, line 5", "“Rnd 1” in “Rnd 1: 5”") in told(found)


@pytest.mark.parametrize(
    "behind", ["but it looks odd", "except once", "apart from the join", "save for one", "but not quite"]
)
def test_words_behind_the_last_count(behind: str) -> None:
    """An exception that names no other row is only talk."""
    found = reviewed(HAT, mia_eml=f"Size M\nCrown: Rnds 1-3 ok, Rnd 4 I got 27 {behind}\n")

    assert [(row, got) for *_, row, got in counts(found)] == [("Rnd 1", 7), ("Rnd 2", 14), ("Rnd 3", 21), ("Rnd 4", 27)]
