using System.Reflection;

namespace ToolpathForge.Tests.Structure;

/// <summary>The public members of an assembly, a line each, in order: what somebody else's code may lean on.</summary>
internal static class ApiText
{
    internal static string Of(Assembly assembly) => string.Concat(
        assembly.GetExportedTypes().SelectMany(Lines).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(line => line + "\n"));

    private static IEnumerable<string> Lines(Type type)
    {
        string name = Name(type);
        string kind = type.IsEnum ? "enum" : type.IsInterface ? "interface" : type.IsValueType ? "struct" : typeof(Delegate).IsAssignableFrom(type) ? "delegate" : "class";
        string more = type is { IsAbstract: true, IsSealed: true } ? "static " : type is { IsAbstract: true, IsInterface: false } ? "abstract " : type is { IsSealed: true, IsClass: true } ? "sealed " : "";
        yield return $"{name} : {more}{kind}";
        foreach (MemberInfo member in type.GetMembers(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
        {
            if (Line(member) is { } line)
            {
                yield return $"{name}.{line}";
            }
        }
    }

    private static string? Line(MemberInfo member) => member switch
    {
        FieldInfo f when Seen(f.IsPublic, f.IsFamily, f.IsFamilyOrAssembly) && !f.IsSpecialName =>
            $"{f.Name} : {(f.IsLiteral ? "const " : f.IsStatic ? "static " : "")}{Name(f.FieldType)}{(f.DeclaringType!.IsEnum ? " = " + Convert.ToInt64(f.GetRawConstantValue(), System.Globalization.CultureInfo.InvariantCulture) : "")}",
        PropertyInfo p when Accessors(p) is { Length: > 0 } accessors => $"{p.Name}{(p.GetIndexParameters() is { Length: > 0 } i ? $"[{Parameters(i)}]" : "")} : {Static(p.GetAccessors(true)[0])}{Name(p.PropertyType)} {{{accessors}}}",
        EventInfo e when e.AddMethod is { IsPublic: true } => $"{e.Name} : event {Name(e.EventHandlerType!)}",
        ConstructorInfo c when Seen(c.IsPublic, c.IsFamily, c.IsFamilyOrAssembly) => $"new({Parameters(c.GetParameters())})",

        // What the compiler makes of every record is told by the record itself.
        MethodInfo m when Seen(m.IsPublic, m.IsFamily, m.IsFamilyOrAssembly) && (!m.IsSpecialName || m.Name.StartsWith("op_", StringComparison.Ordinal))
            && m.Name is not ("PrintMembers" or "Deconstruct" or "<Clone>$" or "Equals" or "GetHashCode" or "ToString" or "op_Equality" or "op_Inequality") =>
            $"{m.Name}{(m.IsGenericMethod ? $"<{string.Join(", ", m.GetGenericArguments().Select(Name))}>" : "")}({Parameters(m.GetParameters())}) : {Static(m)}{Name(m.ReturnType)}",
        _ => null,
    };

    private static bool Seen(bool isPublic, bool isFamily, bool isFamilyOrAssembly) => isPublic || isFamily || isFamilyOrAssembly;

    private static string Static(MethodBase method) => method.IsStatic ? "static " : "";

    private static string Accessors(PropertyInfo property)
    {
        bool isInit = property.SetMethod?.ReturnParameter.GetRequiredCustomModifiers().Any(t => t.Name == "IsExternalInit") == true;
        return string.Join(' ', ((string[])[property.GetMethod is { IsPublic: true } ? "get" : "", property.SetMethod is { IsPublic: true } ? isInit ? "init" : "set" : ""]).Where(s => s.Length > 0));
    }

    private static string Parameters(ParameterInfo[] parameters) =>
        string.Join(", ", parameters.Select(p => $"{(p.ParameterType.IsByRef ? p.IsOut ? "out " : "ref " : "")}{Name(p.ParameterType)} {p.Name}{(p.IsOptional ? "?" : "")}"));

    private static string Name(Type type)
    {
        if (type.IsByRef)
        {
            return Name(type.GetElementType()!);
        }

        if (type.IsArray)
        {
            return Name(type.GetElementType()!) + "[]";
        }

        if (type.IsGenericParameter)
        {
            return type.Name;
        }

        string space = type.Namespace is { } n && !n.StartsWith("System", StringComparison.Ordinal) ? n + "." : "";
        string outer = type.IsNested ? Name(type.DeclaringType!).Split('<')[0] + "." : space;
        string own = type.Name.Split('`')[0];
        return outer + own + (type.IsGenericType ? $"<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : "");
    }
}
