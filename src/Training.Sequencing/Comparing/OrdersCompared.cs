using System.Numerics;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>
/// How many orders of the steps that two revisions have in common are right under each. An order of common steps is
/// right under a revision where a right order of it does them in that order, whatever else it does between. Looked at
/// are the orders in which every common step is done that either revision asks for, one of each one-of group, and none
/// that both leave to the technician.
/// </summary>
public sealed record OrdersCompared
{
    /// <summary>The kind of vehicle; null where neither tells any apart.</summary>
    public required VariantId? Variant { get; init; }

    /// <summary>How many steps such an order has.</summary>
    public required int Steps { get; init; }

    /// <summary>How many are right under the older revision.</summary>
    public required AcceptedOrders Before { get; init; }

    /// <summary>How many are right under the newer revision.</summary>
    public required AcceptedOrders After { get; init; }

    /// <summary>How many are right under both.</summary>
    public required AcceptedOrders Both { get; init; }

    /// <summary>How many became right.</summary>
    public required AcceptedOrders BecameRight { get; init; }

    /// <summary>How many became wrong.</summary>
    public required AcceptedOrders BecameWrong { get; init; }

    /// <summary>An order that became right; null where none did.</summary>
    public ChangedOrder? NowRight { get; init; }

    /// <summary>An order that became wrong; null where none did.</summary>
    public ChangedOrder? NowWrong { get; init; }

    /// <summary>What rules that are gone or new do by themselves, as far as that could be counted.</summary>
    public IReadOnlyList<RuleEffect> Effects { get; init; } = [];

    /// <summary>Whether all was counted to the end.</summary>
    public bool IsExact => Before.IsExact && After.IsExact && BecameRight.IsExact && BecameWrong.IsExact;

    /// <summary>What it means, in sentences.</summary>
    public IReadOnlyList<Sentence> Said
    {
        get
        {
            List<Sentence> said = [];
            if (NowRight is null && NowWrong is null && IsExact)
            {
                said.Add($"The right orders of the {Steps} steps that both have are the same as before: {Before.Count:N0}.");
                return said;
            }

            if (IsExact) said.Add($"Right orders of the {Steps} steps that both have: {Before.Count:N0} before, {After.Count:N0} now.");
            else said.Add($"Right orders of the {Steps} steps that both have: about {Rounded(Before.Count):N0} before, about {Rounded(After.Count):N0} now. There are too many to count one by one, so this is an estimate.");
            if (NowRight is not null && BecameRight.IsExact) said.Add($"Orders that became right: {BecameRight.Count:N0}.");
            else if (NowRight is not null) said.Add($"Orders that became right: about {Rounded(BecameRight.Count):N0}.");
            if (NowWrong is not null && BecameWrong.IsExact) said.Add($"Orders that became wrong: {BecameWrong.Count:N0}.");
            else if (NowWrong is not null) said.Add($"Orders that became wrong: about {Rounded(BecameWrong.Count):N0}.");
            return said;
        }
    }

    /// <summary>An estimate to two digits: more would be a lie.</summary>
    private static BigInteger Rounded(BigInteger count)
    {
        var unit = BigInteger.Pow(10, Math.Max(0, count.ToString(System.Globalization.CultureInfo.InvariantCulture).Length - 2));
        return (count + (unit / 2)) / unit * unit;
    }
}

/// <summary>An order that is right under one revision and wrong under the other.</summary>
/// <param name="Order">The steps that both have, in that order.</param>
/// <param name="AsRight">The whole order as the one revision accepts it, the least waits stated.</param>
/// <param name="AsWrong">The whole order as the other judges it, its own steps put where they fit best.</param>
/// <param name="Why">The gravest thing that the other finds wrong with the order.</param>
public sealed record ChangedOrder(
    IReadOnlyList<StepId> Order, IReadOnlyList<Entry> AsRight, IReadOnlyList<Entry> AsWrong, Finding Why);

/// <summary>What a rule that is gone or new does by itself, all else as it was on its side.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Kind">Gone or new.</param>
/// <param name="Orders">How many orders are right without it that are wrong with it.</param>
public sealed record RuleEffect(RuleId Rule, ChangeKind Kind, BigInteger Orders)
{
    /// <summary>What it does, in a sentence.</summary>
    public Sentence Said
    {
        get
        {
            if (Orders.IsZero) return $"The rule “{Rule}” changes no order by itself: the other rules already ask for the same.";
            if (Kind == ChangeKind.Gone && Orders.IsOne) return $"The rule “{Rule}” is gone, so one more order is right.";
            if (Orders.IsOne) return $"The rule “{Rule}” is new, so one order less is right.";
            if (Kind == ChangeKind.Gone) return $"The rule “{Rule}” is gone, so {Orders:N0} more orders are right.";
            return $"The rule “{Rule}” is new, so {Orders:N0} fewer orders are right.";
        }
    }
}
