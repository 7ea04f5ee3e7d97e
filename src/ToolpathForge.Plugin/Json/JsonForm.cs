using System.Globalization;
using System.Reflection;

namespace ToolpathForge.Plugin.Json;

/// <summary>
/// Makes JSON of the plain classes of the contract, and the other way: a property a member, its name beginning with a small letter. What is null is left out; a member
/// that a class does not know is passed over, as the contract says.
/// </summary>
internal static class JsonForm
{
    /// <summary>The JSON of an object of the contract.</summary>
    internal static JsonValue Write(object? value)
    {
        switch (value)
        {
            case null:
                return JsonValue.Null;
            case string text:
                return JsonValue.Of(text);
            case bool truth:
                return JsonValue.Of(truth);
            case int number:
                return JsonValue.Of(number);
            case long number:
                return JsonValue.Of(number);
            case double number:
                return JsonValue.Of(number);
            case Array array:
                var items = new List<JsonValue>(array.Length);
                foreach (object? item in array)
                {
                    items.Add(Write(item));
                }

                return JsonValue.Of(items);
            default:
                var members = new List<KeyValuePair<string, JsonValue>>();
                foreach (PropertyInfo property in value.GetType().GetProperties())
                {
                    if (property.GetValue(value) is { } held)
                    {
                        members.Add(new KeyValuePair<string, JsonValue>(NameOf(property), Write(held)));
                    }
                }

                return JsonValue.Of(members);
        }
    }

    /// <summary>The object that JSON tells of.</summary>
    /// <exception cref="JsonFaultException">A member is of another kind than its property; the message says which.</exception>
    internal static T Read<T>(JsonValue json)
        where T : class => (T)Read(json, typeof(T), "result");

    private static object Read(JsonValue json, Type type, string where)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string) && json.Kind == JsonKind.Text)
        {
            return json.Text;
        }

        if (type == typeof(bool) && json.Kind == JsonKind.Truth)
        {
            return json.Truth;
        }

        if (type == typeof(double) && json.Kind == JsonKind.Number)
        {
            return json.Number;
        }

        if (type == typeof(int) && json.Kind == JsonKind.Number && json.Number is >= int.MinValue and <= int.MaxValue && Math.Floor(json.Number).Equals(json.Number))
        {
            return (int)json.Number;
        }

        // Beyond 2^53 a double skips whole numbers; no file is as large.
        if (type == typeof(long) && json.Kind == JsonKind.Number && Math.Abs(json.Number) <= 9007199254740992 && Math.Floor(json.Number).Equals(json.Number))
        {
            return (long)json.Number;
        }

        if (type.IsArray && json.Kind == JsonKind.List)
        {
            Type of = type.GetElementType()!;
            var array = Array.CreateInstance(of, json.Items.Count);
            for (int i = 0; i < array.Length; i++)
            {
                array.SetValue(Read(json.Items[i], of, where + "[" + i.ToString(CultureInfo.InvariantCulture) + "]"), i);
            }

            return array;
        }

        if (type.IsClass && !type.IsArray && type != typeof(string) && json.Kind == JsonKind.Map)
        {
            object form = Activator.CreateInstance(type)!;
            foreach (PropertyInfo property in type.GetProperties())
            {
                // Null for what is absent: a writer of our own leaves it out, another may not.
                string name = NameOf(property);
                if (json[name] is { } value && !(value.Kind == JsonKind.Null && MayBeAbsent(property)))
                {
                    property.SetValue(form, Read(value, property.PropertyType, where + "." + name));
                }
            }

            return form;
        }

        throw new JsonFaultException(where + " is no " + type.Name);
    }

    // A reference property that starts as null may stay so; one that starts with a value may not.
    private static bool MayBeAbsent(PropertyInfo property) => property.PropertyType.IsValueType
        ? Nullable.GetUnderlyingType(property.PropertyType) is not null
        : property.GetValue(Activator.CreateInstance(property.DeclaringType!)) is null;

    private static string NameOf(PropertyInfo property) => char.ToLowerInvariant(property.Name[0]) + property.Name.Substring(1);
}
