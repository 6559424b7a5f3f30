namespace MakerStudio.Core.Finished;

/// <summary>One thing a kit needs, with what there is of it in the order in which it would be taken.</summary>
/// <param name="Name">As people say it: "Fig room spray, 100 mL".</param>
/// <param name="PerKit">Above 0.</param>
/// <param name="Offers">Batches of units, or lots of packaging.</param>
public sealed record KitNeed(string Name, int PerKit, IReadOnlyList<KitOffer> Offers)
{
    public long Available => Offers.Sum(o => (long)o.Count);

    /// <summary>Kits this alone would allow.</summary>
    public int Allows => (int)Math.Min(Available / PerKit, int.MaxValue);
}

/// <param name="Id">The batch or the lot.</param>
/// <param name="UnitCost">Not rounded.</param>
public sealed record KitOffer(Guid Id, string Code, int Count, decimal UnitCost);

/// <summary>One thing in one kit.</summary>
/// <param name="Need">Index of the need it answers.</param>
public sealed record KitContent(int Need, Guid Id, string Code, int Count, decimal UnitCost);

/// <summary>Kits with exactly the same codes inside.</summary>
/// <param name="Contents">Of one kit.</param>
public sealed record KitGroup(int Kits, IReadOnlyList<KitContent> Contents)
{
    /// <summary>Cost of one kit, not rounded.</summary>
    public decimal UnitCost => Contents.Sum(c => c.Count * c.UnitCost);
}

/// <param name="Possible">Kits that the scarcest need allows.</param>
/// <param name="Scarcest">The need that limits them; null for a kit of nothing.</param>
/// <param name="Groups">Empty when fewer are possible than asked for.</param>
public sealed record KitPlan(int Asked, int Possible, KitNeed? Scarcest, IReadOnlyList<KitGroup> Groups)
{
    public bool IsMet => Asked <= Possible;

    /// <summary>
    /// Takes each need's offers in their order. Kits whose codes differ stand in groups of their own, so that every kit
    /// keeps the codes of what is really in it.
    /// </summary>
    /// <exception cref="ArgumentException">A kit without contents, a need that is not above 0, or no kit asked for.</exception>
    public static KitPlan For(int kits, IReadOnlyList<KitNeed> needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        if (kits < 1 || needs.Count == 0 || needs.Any(n => n.PerKit < 1))
        {
            throw new ArgumentException("At least one kit, of at least one thing, each at least once.");
        }

        var scarcest = needs.MinBy(n => n.Allows)!;
        return new KitPlan(kits, scarcest.Allows, scarcest, kits <= scarcest.Allows ? Group(kits, needs) : []);
    }

    private static List<KitGroup> Group(int kits, IReadOnlyList<KitNeed> needs)
    {
        var takers = needs.Select((need, index) => new Taker(index, need)).ToList();
        var groups = new List<KitGroup>();
        for (var n = 0; n < kits; n++)
        {
            IReadOnlyList<KitContent> contents = [.. takers.SelectMany(t => t.Next())];
            if (groups.Count > 0 && groups[^1].Contents.SequenceEqual(contents))
            {
                groups[^1] = groups[^1] with { Kits = groups[^1].Kits + 1 };
            }
            else
            {
                groups.Add(new KitGroup(1, contents));
            }
        }

        return groups;
    }

    /// <summary>Walks through the offers of one need.</summary>
    private sealed class Taker(int index, KitNeed need)
    {
        private int _offer;
        private int _taken;

        public List<KitContent> Next()
        {
            var contents = new List<KitContent>();
            for (var open = need.PerKit; open > 0;)
            {
                var offer = need.Offers[_offer];
                var taken = Math.Min(open, offer.Count - _taken);
                if (taken > 0)
                {
                    contents.Add(new KitContent(index, offer.Id, offer.Code, taken, offer.UnitCost));
                }

                open -= taken;
                _taken += taken;
                if (_taken == offer.Count)
                {
                    (_offer, _taken) = (_offer + 1, 0);
                }
            }

            return contents;
        }
    }
}
