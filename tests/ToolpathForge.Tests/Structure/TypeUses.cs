using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace ToolpathForge.Tests.Structure;

/// <summary>One type using another, both by full name.</summary>
internal readonly record struct TypeUse(string FromNamespace, string From, string ToNamespace, string To);

/// <summary>
/// Reads out of a compiled assembly which type uses which: base types, interfaces, attributes, constraints, fields, signatures, locals, and every
/// instruction that names a type or a member. Constants are copied at compile time and leave no trace.
/// </summary>
internal sealed class TypeUses : ISignatureTypeProvider<ImmutableHashSet<EntityHandle>, object?>
{
    private static readonly Dictionary<int, OpCode> OpCodesByValue = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!).ToDictionary(o => (int)(ushort)o.Value);

    private readonly MetadataReader reader;
    private readonly PEReader image;
    private readonly HashSet<TypeUse> uses = [];

    private TypeUses(PEReader image)
    {
        this.image = image;
        reader = image.GetMetadataReader();
    }

    internal static IReadOnlySet<TypeUse> Of(string assemblyPath)
    {
        using var file = new PEReader(File.OpenRead(assemblyPath));
        var all = new TypeUses(file);
        foreach (TypeDefinitionHandle type in all.reader.TypeDefinitions)
        {
            all.Read(type);
        }

        return all.uses;
    }

    /// <summary>The assemblies that an assembly uses; the compiler lists only those that something was taken from.</summary>
    internal static string[] Assemblies(string assemblyPath)
    {
        using var file = new PEReader(File.OpenRead(assemblyPath));
        MetadataReader metadata = file.GetMetadataReader();
        return [.. metadata.AssemblyReferences.Select(r => metadata.GetString(metadata.GetAssemblyReference(r).Name)).Order(StringComparer.Ordinal)];
    }

    private void Read(TypeDefinitionHandle handle)
    {
        TypeDefinition type = reader.GetTypeDefinition(handle);
        Use(handle, type.BaseType);
        foreach (InterfaceImplementationHandle i in type.GetInterfaceImplementations())
        {
            Use(handle, reader.GetInterfaceImplementation(i).Interface);
        }

        Attributes(handle, type.GetCustomAttributes());
        Constraints(handle, type.GetGenericParameters());
        foreach (FieldDefinitionHandle f in type.GetFields())
        {
            FieldDefinition field = reader.GetFieldDefinition(f);
            Use(handle, field.DecodeSignature(this, null));
            Attributes(handle, field.GetCustomAttributes());
        }

        foreach (PropertyDefinitionHandle p in type.GetProperties())
        {
            Attributes(handle, reader.GetPropertyDefinition(p).GetCustomAttributes());
        }

        foreach (MethodDefinitionHandle m in type.GetMethods())
        {
            MethodDefinition method = reader.GetMethodDefinition(m);
            Use(handle, method.DecodeSignature(this, null));
            Attributes(handle, method.GetCustomAttributes());
            Constraints(handle, method.GetGenericParameters());
            if (method.RelativeVirtualAddress != 0)
            {
                Body(handle, image.GetMethodBody(method.RelativeVirtualAddress));
            }
        }
    }

    private void Body(TypeDefinitionHandle from, MethodBodyBlock body)
    {
        if (!body.LocalSignature.IsNil)
        {
            foreach (ImmutableHashSet<EntityHandle> local in reader.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(this, null))
            {
                Use(from, local);
            }
        }

        foreach (ExceptionRegion region in body.ExceptionRegions)
        {
            Use(from, region.CatchType);
        }

        BlobReader il = body.GetILReader();
        while (il.RemainingBytes > 0)
        {
            int code = il.ReadByte();
            OpCode op = OpCodesByValue[code == 0xfe ? 0xfe00 | il.ReadByte() : code];
            switch (op.OperandType)
            {
                case OperandType.InlineNone:
                    break;
                case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                    il.Offset += 1;
                    break;
                case OperandType.InlineVar:
                    il.Offset += 2;
                    break;
                case OperandType.InlineI8 or OperandType.InlineR:
                    il.Offset += 8;
                    break;
                case OperandType.InlineSwitch:
                    int targets = il.ReadInt32();
                    il.Offset += 4 * targets;
                    break;
                case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                    Use(from, MetadataTokens.EntityHandle(il.ReadInt32()));
                    break;
                default:
                    il.Offset += 4;
                    break;
            }
        }
    }

    private void Attributes(TypeDefinitionHandle from, CustomAttributeHandleCollection attributes)
    {
        foreach (CustomAttributeHandle a in attributes)
        {
            Use(from, reader.GetCustomAttribute(a).Constructor);
        }
    }

    private void Constraints(TypeDefinitionHandle from, GenericParameterHandleCollection parameters)
    {
        foreach (GenericParameterConstraintHandle c in parameters.SelectMany(p => reader.GetGenericParameter(p).GetConstraints()))
        {
            Use(from, reader.GetGenericParameterConstraint(c).Type);
        }
    }

    private void Use(TypeDefinitionHandle from, MethodSignature<ImmutableHashSet<EntityHandle>> signature)
    {
        Use(from, signature.ReturnType);
        foreach (ImmutableHashSet<EntityHandle> parameter in signature.ParameterTypes)
        {
            Use(from, parameter);
        }
    }

    private void Use(TypeDefinitionHandle from, ImmutableHashSet<EntityHandle> to)
    {
        foreach (EntityHandle handle in to)
        {
            Use(from, handle);
        }
    }

    private void Use(TypeDefinitionHandle from, EntityHandle to)
    {
        if (to.IsNil)
        {
            return;
        }

        switch (to.Kind)
        {
            case HandleKind.TypeDefinition or HandleKind.TypeReference:
                (string fromSpace, string fromName) = Name(from);
                (string toSpace, string toName) = Name(to);
                uses.Add(new TypeUse(fromSpace, fromName, toSpace, toName));
                break;
            case HandleKind.TypeSpecification:
                Use(from, reader.GetTypeSpecification((TypeSpecificationHandle)to).DecodeSignature(this, null));
                break;
            case HandleKind.FieldDefinition:
                Use(from, reader.GetFieldDefinition((FieldDefinitionHandle)to).GetDeclaringType());
                break;
            case HandleKind.MethodDefinition:
                MethodDefinition method = reader.GetMethodDefinition((MethodDefinitionHandle)to);
                Use(from, method.GetDeclaringType());
                Use(from, method.DecodeSignature(this, null));
                break;
            case HandleKind.MethodSpecification:
                MethodSpecification made = reader.GetMethodSpecification((MethodSpecificationHandle)to);
                Use(from, made.Method);
                foreach (ImmutableHashSet<EntityHandle> argument in made.DecodeSignature(this, null))
                {
                    Use(from, argument);
                }

                break;
            case HandleKind.MemberReference:
                MemberReference member = reader.GetMemberReference((MemberReferenceHandle)to);
                Use(from, member.Parent);
                if (member.GetKind() == MemberReferenceKind.Method)
                {
                    Use(from, member.DecodeMethodSignature(this, null));
                }
                else
                {
                    Use(from, member.DecodeFieldSignature(this, null));
                }

                break;
        }
    }

    /// <summary>Namespace and name of a type; a nested one belongs to the namespace of the type around it.</summary>
    private (string Space, string Name) Name(EntityHandle handle)
    {
        if (handle.Kind == HandleKind.TypeDefinition)
        {
            TypeDefinition type = reader.GetTypeDefinition((TypeDefinitionHandle)handle);
            string name = reader.GetString(type.Name);
            return type.GetDeclaringType() is { IsNil: false } outer ? Name(outer) is var (space, around) ? (space, around + "+" + name) : default : (reader.GetString(type.Namespace), name);
        }

        TypeReference reference = reader.GetTypeReference((TypeReferenceHandle)handle);
        string simple = reader.GetString(reference.Name);
        if (reference.ResolutionScope.Kind == HandleKind.TypeReference)
        {
            (string space, string around) = Name(reference.ResolutionScope);
            return (space, around + "+" + simple);
        }

        return (reader.GetString(reference.Namespace), simple);
    }

    public ImmutableHashSet<EntityHandle> GetTypeFromDefinition(MetadataReader _, TypeDefinitionHandle handle, byte rawTypeKind) => [handle];

    public ImmutableHashSet<EntityHandle> GetTypeFromReference(MetadataReader _, TypeReferenceHandle handle, byte rawTypeKind) => [handle];

    public ImmutableHashSet<EntityHandle> GetTypeFromSpecification(MetadataReader _, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public ImmutableHashSet<EntityHandle> GetGenericInstantiation(ImmutableHashSet<EntityHandle> genericType, ImmutableArray<ImmutableHashSet<EntityHandle>> typeArguments) =>
        typeArguments.Aggregate(genericType, (all, argument) => all.Union(argument));

    public ImmutableHashSet<EntityHandle> GetFunctionPointerType(MethodSignature<ImmutableHashSet<EntityHandle>> signature) =>
        signature.ParameterTypes.Aggregate(signature.ReturnType, (all, parameter) => all.Union(parameter));

    public ImmutableHashSet<EntityHandle> GetModifiedType(ImmutableHashSet<EntityHandle> modifier, ImmutableHashSet<EntityHandle> unmodifiedType, bool isRequired) => unmodifiedType.Union(modifier);

    public ImmutableHashSet<EntityHandle> GetArrayType(ImmutableHashSet<EntityHandle> elementType, ArrayShape shape) => elementType;

    public ImmutableHashSet<EntityHandle> GetByReferenceType(ImmutableHashSet<EntityHandle> elementType) => elementType;

    public ImmutableHashSet<EntityHandle> GetPinnedType(ImmutableHashSet<EntityHandle> elementType) => elementType;

    public ImmutableHashSet<EntityHandle> GetPointerType(ImmutableHashSet<EntityHandle> elementType) => elementType;

    public ImmutableHashSet<EntityHandle> GetSZArrayType(ImmutableHashSet<EntityHandle> elementType) => elementType;

    public ImmutableHashSet<EntityHandle> GetPrimitiveType(PrimitiveTypeCode typeCode) => [];

    public ImmutableHashSet<EntityHandle> GetGenericMethodParameter(object? genericContext, int index) => [];

    public ImmutableHashSet<EntityHandle> GetGenericTypeParameter(object? genericContext, int index) => [];
}
