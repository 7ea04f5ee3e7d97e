using ToolpathForge.Tests.Structure.Planted.Upper;

// Types that break the order on purpose, in each way that a compiled type can: the checker must see every one of them.
namespace ToolpathForge.Tests.Structure.Planted.Upper
{
    internal class Late
    {
        internal static int Count = 1;

        internal class Inner
        {
        }
    }

    internal class LateException : Exception
    {
    }

    internal interface ILate
    {
    }

    [AttributeUsage(AttributeTargets.All)]
    internal sealed class LateAttribute : Attribute
    {
    }
}

namespace ToolpathForge.Tests.Structure.Planted.Lower
{
    internal class ByBase : Late
    {
    }

    internal class ByInterface : ILate
    {
    }

    internal class ByField
    {
        internal Late? Held { get; set; }
    }

    internal class ByGenericArgument
    {
        internal List<Dictionary<string, Late[]>>? Held { get; set; }
    }

    internal class ByParameter
    {
        internal static void Take(Late.Inner? inner) => _ = inner;
    }

    internal class ByInstruction
    {
        internal static object Make() => new Late();
    }

    internal class ByStaticField
    {
        internal static int Make() => Late.Count;
    }

    internal class ByLambda
    {
        internal static Func<object, bool> Make() => o => o is Late;
    }

    internal class ByTypeOf
    {
        internal static Type Make() => typeof(Late);
    }

    internal class ByGenericCall
    {
        internal static object Make() => Enumerable.Empty<Late>();
    }

    internal class ByCatch
    {
        internal static void Make(Action act)
        {
            try
            {
                act();
            }
            catch (LateException)
            {
                act();
            }
        }
    }

    [Late]
    internal class ByAttribute
    {
    }

    internal class ByConstraint<T>
        where T : ILate
    {
    }

    internal class Innocent
    {
        internal static int Make() => 1;
    }
}
