using System.Reflection;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Quantities;

/// <summary>Every kind of quantity, found in the assembly so that none is forgotten.</summary>
internal static class Kinds
{
    public static IReadOnlyList<Type> Types { get; } =
    [
        .. typeof(Voltage).Assembly.GetTypes().Where(type => type.IsValueType && type.GetInterfaces().Any(face =>
            face.IsGenericType && face.GetGenericTypeDefinition() == typeof(IQuantity<>))),
    ];

    public static IReadOnlyList<QuantityKind> All { get; } =
    [
        .. Types.Select(type => (QuantityKind)type.GetProperty("Kind", BindingFlags.Public | BindingFlags.Static)!
            .GetValue(null)!),
    ];
}
