using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Routing;
using NetArchTest.Rules;

namespace Training.Architecture.Tests;

/// <summary>Each feature of the web stands by itself, and its controllers stay small and say who may come in.</summary>
public sealed class FeatureTests
{
    private const string Root = "Training.Web.Features.";
    private const int MostActions = 5;

    /// <summary>The features: the folders below Features, without what all of them share.</summary>
    private static readonly IReadOnlyList<string> Features = Tree.Some(
        Directory.GetDirectories(Path.Combine(Tree.Root, "src", "Training.Web", "Features")).Select(folder => Path.GetFileName(folder)!)
            .Where(name => name != "Shared").Order(StringComparer.Ordinal), "features");

    private static readonly IReadOnlyList<Type> Controllers = Tree.Some(
        Tree.Web.GetTypes().Where(type => typeof(ControllerBase).IsAssignableFrom(type) && !type.IsAbstract), "controllers");

    public static TheoryData<string> EachFeature => [.. Features];

    [Theory]
    [MemberData(nameof(EachFeature))]
    public void A_feature_uses_no_other_feature(string feature)
    {
        var types = Types.InAssembly(Tree.Web).That().ResideInNamespaceMatching($"^{Regex.Escape(Root + feature)}$");
        Tree.Some(types.GetTypes(), $"types of {feature}");
        var result = types.ShouldNot().HaveDependencyOnAny(Others(feature)).GetResult();
        Assert.True(result.IsSuccessful, $"{feature} is used with another feature by: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Theory]
    [MemberData(nameof(EachFeature))]
    public void A_view_uses_no_other_feature(string feature)
    {
        var types = Types.InAssembly(Tree.Web).That().ResideInNamespace("AspNetCoreGeneratedDocument").And().HaveNameMatching($"^Features_{feature}_");
        var result = types.ShouldNot().HaveDependencyOnAny(Others(feature)).GetResult();
        Assert.True(result.IsSuccessful, $"Views that use another feature: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Fact]
    public void Every_view_on_disk_is_one_of_those_that_are_looked_at()
    {
        var compiled = Types.InAssembly(Tree.Web).That().ResideInNamespace("AspNetCoreGeneratedDocument").GetTypes().Select(type => type.Name).ToHashSet();
        var web = Path.Combine(Tree.Root, "src", "Training.Web");
        var views = Tree.Files("src/Training.Web", ".cshtml")
            .Select(file => Path.ChangeExtension(Path.GetRelativePath(web, file), null).Replace(Path.DirectorySeparatorChar, '_'));
        Assert.Empty(views.Except(compiled));
    }

    [Fact]
    public void What_is_shared_and_what_starts_the_house_use_no_feature()
    {
        var types = Types.InAssembly(Tree.Web).That().ResideInNamespace(Root + "Shared").Or().ResideInNamespace("Training.Web.Startup")
            .Or().ResideInNamespace("Training.Web.Drawings");
        Tree.Some(types.GetTypes(), "shared types");
        var result = types.ShouldNot().HaveDependencyOnAny(Others("Shared")).GetResult();
        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
    }

    [Fact]
    public void A_controller_stands_in_the_folder_of_its_name() =>
        Assert.Empty(Controllers.Where(type => type.Namespace + "Controller" != Root + type.Name).Select(type => type.FullName));

    [Fact]
    public void A_controller_has_at_most_five_actions() =>
        Assert.DoesNotContain(Controllers.Select(type => (type.Name, Actions: Actions(type).Count)), item => item.Actions is 0 or > MostActions);

    [Fact]
    public void A_controller_or_each_of_its_actions_says_who_may_come_in() =>
        Assert.Empty(Controllers.Where(type => !SaysWho(type) && !Actions(type).TrueForAll(SaysWho)).Select(type => type.Name));

    private static bool SaysWho(MemberInfo member) => member.GetCustomAttributes<Attribute>(inherit: false)
        .Any(attribute => attribute is AuthorizeAttribute or AllowAnonymousAttribute);

    private static List<MethodInfo> Actions(Type controller) =>
        [.. controller.GetMethods(BindingFlags.Instance | BindingFlags.Public | BindingFlags.DeclaredOnly)
            .Where(method => method.GetCustomAttributes<Attribute>().Any(attribute => attribute is IActionHttpMethodProvider or RouteAttribute))];

    private static string[] Others(string feature) => [.. Features.Where(other => other != feature).Select(other => Root + other)];
}
