using System.Collections.Immutable;
using CsCheck;
using ToolpathForge.Schedules;

namespace ToolpathForge.Tests.Schedules;

/// <summary>The buying list against sums done by hand and against trying every way to share pieces out.</summary>
public class StockCuttingTests
{
    private static double Total(StockPlan plan) => plan.Lengths.Sum(l => l.Bought);

    // 1000 + 3 + 997 = 2000 sharp, with 2024 bought and 12 off either end; a tenth more does not fit.
    [Theory]
    [InlineData(997, 1)]
    [InlineData(997.1, 2)]
    public void A_kerf_is_lost_between_two_pieces_and_none_after_the_last(double second, int boards)
    {
        StockPlan plan = StockCutting.Plan([new(1000, 1), new(second, 1)], [2024], 3, 12);
        Assert.Equal(boards, plan.Lengths.Length);
        Assert.True(plan.IsLeast);
    }

    // Four of 1500 from 3-metre lengths are four boards where the kerf does not fit, two where there is none.
    [Fact]
    public void Halves_of_a_board_need_the_kerf_as_well()
    {
        Assert.Equal(4, StockCutting.Plan([new(1500, 4)], [3000], 3, 0).Lengths.Length);
        Assert.Equal(2, StockCutting.Plan([new(1500, 4)], [3000], 0, 0).Lengths.Length);
    }

    // 3 x 1900: one of 6000 (5706 with kerfs) is less than three of 2400 or a 4800 and a 2400.
    [Fact]
    public void The_length_that_wastes_least_is_bought()
    {
        StockPlan plan = StockCutting.Plan([new(1900, 3)], [2400, 4800, 6000], 3, 0);
        SawnLength only = Assert.Single(plan.Lengths);
        Assert.Equal(6000, only.Bought);
        Assert.Equal([1900.0, 1900, 1900], only.Pieces);
    }

    [Fact]
    public void What_is_longer_than_anything_sold_is_told_and_the_rest_is_planned()
    {
        StockPlan plan = StockCutting.Plan([new(5000, 2), new(800, 1)], [2400, 3600], 3, 10);
        Assert.Equal([new PieceLength(5000, 2)], plan.Oversize);
        Assert.Equal(2400, Assert.Single(plan.Lengths).Bought);
    }

    [Fact]
    public void Nothing_cheaper_is_found_by_trying_everything() => Gen.Select(
        Gen.Double[300, 1400].Array[1, 6], Gen.Double[1500, 3500].Array[1, 3], Gen.Double[0, 6], Gen.Double[0, 20]).Sample((pieces, sold, kerf, trim) =>
        {
            StockPlan plan = StockCutting.Plan([.. pieces.Select(p => new PieceLength(p, 1))], [.. sold], kerf, trim);
            Assert.True(plan.IsLeast);
            Assert.Equal(pieces.Order(), plan.Lengths.SelectMany(l => l.Pieces).Concat(plan.Oversize.Select(o => o.Length)).Order());
            foreach (SawnLength board in plan.Lengths)
            {
                Assert.Contains(board.Bought, sold);
                Assert.True(board.Pieces.Sum() + (kerf * (board.Pieces.Length - 1)) <= board.Bought - (2 * trim) + 1e-6);
            }

            double[] fit = [.. pieces.Where(p => p <= sold.Max() - (2 * trim) + 1e-9)];
            Assert.Equal(Cheapest(fit, [], sold, kerf, trim), Total(plan), 6);
        });

    // Puts the first piece into each board so far, or into a new one, and so on.
    private static double Cheapest(ReadOnlySpan<double> pieces, ImmutableArray<double> used, double[] sold, double kerf, double trim)
    {
        if (pieces.IsEmpty)
        {
            return used.Sum(u => sold.Where(s => u - kerf <= s - (2 * trim) + 1e-9).DefaultIfEmpty(double.PositiveInfinity).Min());
        }

        double best = double.PositiveInfinity;
        for (int i = 0; i <= used.Length; i++)
        {
            double size = pieces[0] + kerf;
            ImmutableArray<double> next = i < used.Length ? used.SetItem(i, used[i] + size) : used.Add(size);
            if (next[i] - kerf <= sold.Max() - (2 * trim) + 1e-9)
            {
                best = Math.Min(best, Cheapest(pieces[1..], next, sold, kerf, trim));
            }
        }

        return best;
    }

    [Fact]
    public void A_long_list_is_planned_at_once_and_says_that_it_may_not_be_the_least()
    {
        ImmutableArray<PieceLength> pieces = [.. Enumerable.Range(0, 12).Select(i => new PieceLength(400 + (i * 97), 30))];
        StockPlan plan = StockCutting.Plan(pieces, [2400, 3600, 4800], 3, 12);
        Assert.False(plan.IsLeast);
        Assert.Equal(360, plan.Lengths.Sum(l => l.Pieces.Length));

        // No list can do with less than the pieces themselves, and this one not with a tenth more.
        double used = pieces.Sum(p => p.Length * p.Count);
        Assert.InRange(Total(plan), used, used * 1.1);
    }
}
