"""plots.csv with a slip of the hand in each place."""

GOOD = """\
plot,patch,species,low_in,high_in,count,plot_m2
1,rim,tree-of-heaven,0,1,14,40.47
2,rim,tree-of-heaven,0,1,0,40.47
"""


def test_a_good_file_is_read(tract):
    """Inches become centimetres, names Latin ones, nothing counted stays nothing."""
    tract.write("plots.csv", GOOD)
    one, two = tract.read().tract.plots
    assert (one.species, one.low_cm, one.high_cm, one.count) == ("Ailanthus altissima", 0.0, 2.54, 14)
    assert two.count == 0


def test_what_is_wrong_is_told_with_its_line(tract):
    """A class upside down, an unknown plant, an unknown patch and half a stem."""
    for old, new, message in (
        (",0,1,14,", ",2,1,14,", "plots.class"),
        ("1,rim,tree-of-heaven", "1,rim,treee-of-heavenn", "stems.unknown_species"),
        ("1,rim,", "1,rimm,", "stems.unknown_patch"),
        (",14,", ",14.5,", "cell.not_whole"),
    ):
        assert old in GOOD
        tract.write("plots.csv", GOOD.replace(old, new, 1))
        problem = tract.problems()[0]
        assert (problem.message, problem.file, problem.line) == (message, "plots.csv", 2)
