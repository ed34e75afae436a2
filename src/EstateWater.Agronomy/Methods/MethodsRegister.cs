using System.Reflection;

namespace EstateWater.Agronomy.Methods;

/// <summary>One published method and where the program carries it out.</summary>
/// <param name="Name">The method's name.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Check">What it is tested against.</param>
/// <param name="Area">Folder of the code: Sun, Weather, Soil and so on.</param>
/// <param name="Code">The class, or class and function, that carries it out.</param>
public sealed record RegisteredMethod(string Name, string Source, string Check, string Area, string Code);

/// <summary>Every method that the library carries out, as its classes and functions declare it with <see cref="MethodAttribute"/>.</summary>
public static class MethodsRegister
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    /// <summary>All methods, by area, then by name.</summary>
    public static IReadOnlyList<RegisteredMethod> All() =>
    [
        .. typeof(MethodsRegister).Assembly.GetTypes()
            .SelectMany(type => OfMember(type, type, type.Name)
                .Concat(type.GetMethods(Declared).SelectMany(method => OfMember(method, type, $"{type.Name}.{method.Name}"))))
            .OrderBy(method => method.Area, StringComparer.Ordinal)
            .ThenBy(method => method.Name, StringComparer.Ordinal)
            .ThenBy(method => method.Code, StringComparer.Ordinal),
    ];

    private static IEnumerable<RegisteredMethod> OfMember(MemberInfo member, Type type, string code) =>
        member.GetCustomAttributes<MethodAttribute>(inherit: false).Select(method =>
            new RegisteredMethod(method.Name, method.Source, method.Check, type.Namespace![(type.Namespace!.LastIndexOf('.') + 1)..], code));
}
