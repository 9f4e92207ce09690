using CsCheck;
using QuikGraph;
using QuikGraph.Algorithms;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Oracle.Tests;

/// <summary>The order behind first-and-then rules against a general graph library (QuikGraph 2.5.0).</summary>
public sealed class ClosureAgainstQuikGraphTests
{
    [Fact]
    public void The_waits_imply_just_the_transitive_closure_of_the_rules() => ForEach((_, grader, rules) =>
    {
        var waits = Graph(grader.Procedure, grader.Order().Waits.Select(wait => (wait.First, wait.Then)));
        Assert.Equal(Closure(rules), Closure(waits));
        Assert.True(waits.EdgeCount <= rules.EdgeCount);
    });

    [Fact]
    public void A_topological_order_of_the_rules_is_accepted_and_its_reverse_only_where_there_are_no_rules() => ForEach((_, grader, rules) =>
    {
        var sorted = rules.TopologicalSort().ToList();
        Assert.True(grader.Grade(Of(grader, sorted)).Value.Accepted);
        sorted.Reverse();
        Assert.Equal(rules.EdgeCount == 0, grader.Grade(Of(grader, sorted)).Value.Accepted);
    });

    [Fact]
    public void Of_any_order_just_the_edges_that_run_backwards_are_found() => ForEach((seed, grader, rules) =>
    {
        var order = rules.Vertices.ToArray();
        new Random(seed).Shuffle(order);
        var backwards = rules.Edges.Where(edge => Array.IndexOf(order, edge.Source) > Array.IndexOf(order, edge.Target))
            .Select(edge => (edge.Source, edge.Target)).ToHashSet();
        var found = grader.Grade(Of(grader, order)).Value.Findings.Select(finding => (finding.Steps[0], finding.Steps[1])).ToHashSet();
        Assert.Equal(backwards, found);
    });

    private static void ForEach(Action<int, Grader, AdjacencyGraph<StepId, Edge<StepId>>> check) =>
        Gen.Select(Gen.Int[2, 40], Gen.ULong).Sample(
            one =>
            {
                var procedure = Plain(RandomProcedure.Of(one.Item1, one.Item2).Item1);
                var pairs = procedure.Rules.OfType<OrderRule>().SelectMany(rule => rule.First.SelectMany(first => rule.Then.Select(then => (first, then))));
                check((int)one.Item2, Grader.For(procedure).Value, Graph(procedure, pairs));
            },
            iter: 200,
            threads: 1);

    /// <summary>The procedure with nothing but its steps and what must come before what: the listing is still a right order.</summary>
    private static Procedure Plain(Procedure procedure) => procedure with
    {
        Variants = [],
        Facts = [],
        Steps = [.. procedure.Steps.Select(step => step with { IsOptional = false, Choice = null, Variants = [], Sets = [], IsWait = false })],
        Rules = [.. procedure.Rules.OfType<OrderRule>().Select(rule => rule with { AtLeast = null })],
    };

    private static Answer Of(Grader grader, IEnumerable<StepId> order) => new([.. order.Select(id => new Entry(id))]);

    private static AdjacencyGraph<StepId, Edge<StepId>> Graph(Procedure procedure, IEnumerable<(StepId First, StepId Then)> pairs)
    {
        var graph = new AdjacencyGraph<StepId, Edge<StepId>>(allowParallelEdges: false);
        graph.AddVertexRange(procedure.Steps.Select(step => step.Id));
        foreach (var (first, then) in pairs) graph.AddEdge(new Edge<StepId>(first, then));
        return graph;
    }

    private static HashSet<(StepId First, StepId Then)> Closure(AdjacencyGraph<StepId, Edge<StepId>> graph) =>
        [.. graph.ComputeTransitiveClosure((first, then) => new Edge<StepId>(first, then)).Edges.Select(edge => (edge.Source, edge.Target))];
}
