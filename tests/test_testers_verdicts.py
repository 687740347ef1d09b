"""Who is right in each row: the print, the tester or the words."""

from __future__ import annotations

from testers_help import HAT, kinds, reviewed, verdicts

WRONG = HAT.replace("(24 (28, 32) sc)\nRnds 5-8", "(25 (28, 32) sc)\nRnds 5-8")  # Rnd 4, first size
MAIL = "Size: S\nPart: Crown\n"
SOUND = {1: 6, 2: 12, 3: 18, 4: 24, 5: 24, 6: 24, 7: 24, 8: 24}


def mail(size: str = "S", **others: int) -> str:
    """A tester's counts of the crown in the first size, some of them others: r4=23."""
    got = SOUND | {int(row[1:]): count for row, count in others.items()}
    return f"Size: {size}\nPart: Crown\n" + "\n".join(f"Rnd {row}: {count}" for row, count in got.items())


def test_counts_that_agree() -> None:
    """A count that is printed and recomputed agrees."""
    review = reviewed(HAT, mia_eml=mail())

    assert set(verdicts(review).values()) == {"agrees"}
    assert [one.why for one in review.judged][0] == "agrees with print and recount"


def test_testers_and_recount_against_the_print() -> None:
    """Testers who agree with each other and with the recount show the print wrong."""
    review = reviewed(WRONG, mia_eml=mail(), bea_eml=mail())

    assert verdicts(review)["Mia", "Rnd 4"] == verdicts(review)["Bea", "Rnd 4"] == "print-wrong"
    assert kinds(review)[0] == "print-wrong"
    assert review.points[0].testers == ("Mia", "Bea")
    assert "24" in review.points[0].says and "25" in review.points[0].says


def test_one_tester_and_the_recount() -> None:
    """One tester who comes to the recount shows the print wrong as well, and is said to be one."""
    review = reviewed(WRONG, mia_eml=mail())

    assert review.points[0].kind == "print-wrong"
    assert review.points[0].says.startswith("One tester and the recount")


def test_a_slip_before_does_not_hide_a_wrong_print() -> None:
    """A tester who has lost a stitch before still speaks for the recount, less what was lost."""
    review = reviewed(WRONG, mia_eml=mail(r3=17, r4=23, r5=23, r6=23, r7=23, r8=23), bea_eml=mail())

    assert verdicts(review)["Mia", "Rnd 3"] == "testers-slip"
    assert verdicts(review)["Mia", "Rnd 4"] == "print-wrong"
    assert verdicts(review)["Mia", "Rnd 5"] == "follows"


def test_one_of_three_has_slipped() -> None:
    """One who differs has slipped; the rows after it are judged from there, until the count is met again."""
    review = reviewed(HAT, mia_eml=mail(r5=25, r6=25), bea_eml=mail(), cy_eml=mail())

    found = [verdicts(review)["Mia", f"Rnd {number}"] for number in range(4, 9)]
    assert found == ["agrees", "testers-slip", "follows", "agrees", "agrees"]


def test_a_second_slip_is_a_point_of_its_own() -> None:
    """A tester who is off by another number later on has slipped again there."""
    review = reviewed(HAT, mia_eml=mail(r4=23, r5=23, r6=23, r7=21, r8=21), bea_eml=mail(), cy_eml=mail())

    slips = [row for (who, row), verdict in verdicts(review).items() if verdict == "testers-slip"]
    assert slips == ["Rnd 4", "Rnd 7"]


def test_words_read_otherwise() -> None:
    """Testers who agree with each other and not with the recount: the reading that gives their number is shown."""
    pattern = (
        "Cap\nUS terms\nRnd 1: Make a magic ring, 6 sc in ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
        "Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * 5 times more. (18 sc)\n"
        "Rnd 4: *Sc in next 2 sc, 2 sc in next sc; rep from * 5 times more. (24 sc)\n"
    )
    theirs = "Rnd 1: 6\nRnd 2: 12\nRnd 3: 17\nRnd 4: 22\n"  # a pass of Rnd 3 without its increase
    review = reviewed(pattern, mia_eml=theirs, bea_eml=theirs, cy_eml="Rnd 1: 6\nRnd 2: 12\nRnd 3: 18\nRnd 4: 24\n")

    assert verdicts(review)["Mia", "Rnd 3"] == "words-misread"
    assert kinds(review)[0] == "words-misread"
    assert [figures[3] for figures in review.points[0].figures] == [(17, 17)]


def test_a_repeat_too_few() -> None:
    """Testers who take "5 times more" as five in all: the reading that gives their number is shown."""
    pattern = (
        "Cap\nUS terms\nRnd 1: Make a magic ring, 6 sc in ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
        "Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * 5 times more. (18 sc)\n"
    )
    theirs = "Rnd 1: 6\nRnd 2: 12\nRnd 3: 15\n"
    point = reviewed(pattern, mia_eml=theirs, bea_eml=theirs).points[0]

    assert point.kind == "words-misread"
    assert point.readings[0].words.startswith("work the repeat 4 times more instead of 5 times more")


def test_a_chain_of_which_nothing_is_said() -> None:
    """Where it is not said whether the chain counts, testers who read it otherwise are shown that reading."""
    pattern = (
        "Mat\nUS terms\nRnd 1: Ch 4, join with sl st to form a ring, ch 3, 11 dc in ring, join with sl st in top of ch-3. (12 dc)\n"
        "Rnd 2: Ch 1, sc in each dc around, join with sl st in first sc. (12 sc)\n"
    )
    review = reviewed(pattern, mia_eml="Rnd 1: 11\n", bea_eml="Rnd 1: 11\n")

    point = review.points[0]
    assert point.kind == "words-misread"
    assert point.readings[0].allowed and "not counted as a stitch" in point.readings[0].words


def test_unit_by_unit() -> None:
    """Groups that are counted unit by unit: 10 loops by the testers where 9 are printed and made 10 (a closing in loops)."""
    pattern = (
        "Fringe\nUS terms\nCh 12.\nRow 1: Sc in 2nd ch from hook, *ch 3, sc in next ch; rep from * across."
        " (11 sc, 9 ch-3 sps)\n"
    )
    review = reviewed(pattern, mia_eml="Row 1: 11 sc, 10 ch-3 sps\n", bea_eml="Row 1: 10 ch-3 sps\n")

    assert [(point.kind, point.figures) for point in review.points] == [("print-wrong", ((0, 9, 10, (10, 10)),))]


def test_two_who_are_four_short() -> None:
    """Two people both four short of print and recount, a case that was published: not slips, but words to look at."""
    rows = "\n".join(f"Row {number}: Ch 1, turn, sc in each sc across. (40 sc)" for number in range(2, 6))
    pattern = f"Panel\nUS terms\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across. (40 sc)\n{rows}\n"
    theirs = "Row 1: 40\nRow 2: 36\nRow 3: 36\n"
    review = reviewed(pattern, mia_eml=theirs, bea_eml=theirs)

    assert kinds(review) == ["words-misread"]


def test_print_alone() -> None:
    """The printed count from one tester, where words and other testers come to another, may have been copied."""
    review = reviewed(WRONG, mia_eml=mail(r4=25), bea_eml=mail(), cy_eml=mail())

    assert verdicts(review)["Mia", "Rnd 4"] == "cannot-tell"
    assert verdicts(review)["Bea", "Rnd 4"] == "print-wrong"


def test_a_row_that_was_not_recomputed_is_no_agreement_with_a_recount() -> None:
    """Where the words were not understood, a count can only agree with the print, and is said to do no more."""
    pattern = HAT.replace("2 sc in each sc around", "blorp in each sc around")
    review = reviewed(pattern, mia_eml=mail())

    why = {one.step.row.label: one.why for one in review.judged}
    assert why["Rnd 2"] == "agrees with the print; the row was not recomputed"


def test_nothing_to_compare() -> None:
    """A row with no printed count that was not recomputed: nothing can be told."""
    pattern = "Oddment\nUS terms\nRow 1: Blorp in each blip. (10 sts)\nRow 2: Blorp again.\n"
    review = reviewed(pattern, mia_eml="Row 1: 10\nRow 2: 12\n")

    assert verdicts(review)["Mia", "Row 2"] == "cannot-tell"


def test_sizes_are_judged_by_their_own_counts() -> None:
    """Testers of two sizes who are each off in the same way agree with each other."""
    off = "Part: Crown\nRnd 2: {}\nRnd 3: {}\n"
    review = reviewed(
        HAT,
        mia_eml="Size: S\n" + off.format(12, 16),
        bea_eml="Size: M\n" + off.format(14, 19),
        cy_eml="Size: L\n" + off.format(16, 22),
    )

    assert kinds(review)[0] == "words-misread"
    assert [size for size, *_ in review.points[0].figures] == [0, 1, 2]


def test_rows_that_follow_from_a_wrong_row_are_one_point() -> None:
    """Prints that are wrong only because those of a row before were are told of with that row."""
    pattern = HAT.replace(
        "*Sc in next sc, 2 sc in next sc; rep from * around. (18 (21, 24) sc)",
        "*Sc in next sc, 2 sc in next sc; rep from * around. (20 (21, 24) sc)",
    )
    review = reviewed(pattern, mia_eml=mail(), bea_eml=mail())

    assert kinds(review).count("print-wrong") == 1


def test_a_number_that_stands_twice_is_not_chosen_from() -> None:
    """A row whose number stands twice in its part is not guessed."""
    pattern = HAT.replace("Rnd 4: *", "Rnd 3: *")
    review = reviewed(pattern, mia_eml="Size: S\nCrown, Rnd 3: 18\n")

    assert review.judged == () and "twice" in review.unmatched[0].why


def test_another_draft() -> None:
    """A tester whose copy prints another count is told to have had another draft."""
    review = reviewed(HAT, mia_eml=MAIL + "Rnd 4: I got 24 instead of 26")

    assert "other-draft" in kinds(review)


def test_part_that_goes_on_with_its_numbers() -> None:
    """Row 3 under a heading within the Back is a row of the Back."""
    pattern = (
        "Top\nUS terms\n\nBACK\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
        "Row 2: Ch 1, turn, sc in each sc across. (20 sc)\n\nShape Armholes\n"
        "Row 3: Ch 1, turn, sc2tog, sc in each sc to last 2 sc, sc2tog. (18 sc)\n"
    )
    review = reviewed(pattern, t_csv="Tester,Part,Row,Count\nMia,Back,2,19\nMia,Back,3,17\n")

    assert verdicts(review) == {("Mia", "Row 2"): "testers-slip", ("Mia", "Row 3"): "follows"}


def test_printed_count_met_by_chance() -> None:
    """One fewer since Rnd 3 meets a wrong print that is one fewer: it goes on from Rnd 3, and is no second slip."""
    wrong = HAT.replace("(24 (28, 32) sc)\nRnds 5-8", "(23 (28, 32) sc)\nRnds 5-8")
    off = mail(r3=17, r4=23, r5=23, r6=23, r7=23, r8=23)
    review = reviewed(wrong, mia_eml=off, bea_eml=mail())

    assert verdicts(review)["Mia", "Rnd 3"] == "testers-slip"
    assert {verdicts(review)["Mia", f"Rnd {row}"] for row in (4, 5, 6, 7, 8)} == {"follows"}
    assert review.points[0].kind == "print-wrong" and review.points[0].testers == ("Bea",)
    assert review.points[0].says.startswith("One tester and the recount come to 24")


def test_others_in_other_sizes() -> None:
    """Where the others made other sizes, their count is not said to be this size's."""
    review = reviewed(
        HAT, mia_eml=mail(r4=23), bea_eml=mail("M", r1=7, r2=14, r3=21, r4=28, r5=28, r6=28, r7=28, r8=28)
    )
    (slip,) = [point for point in review.points if point.kind == "testers-slip"]

    assert "1 other tester has what is due in their sizes" in slip.says
