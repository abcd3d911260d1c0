using Npgsql;
using NpgsqlTypes;

namespace Catalogue.Data.Questions;

/// <summary>A value for SQL written by hand. A type of its own, so that one array of texts is never taken for several texts.</summary>
internal readonly struct SqlValue
{
    private readonly object _value;

    private SqlValue(object value) => _value = value;

    public static implicit operator SqlValue(Guid value) => new(value);

    public static implicit operator SqlValue(Guid[] value) => new(value);

    public static implicit operator SqlValue(string value) => new(value);

    public static implicit operator SqlValue(string[] value) => new(value);

    public static implicit operator SqlValue(int value) => new(value);

    public static implicit operator SqlValue(bool value) => new(value);

    /// <summary>The value as a parameter, of the type that its kind has. An empty array does not say of what.</summary>
    public NpgsqlParameter ToParameter()
    {
        var parameter = new NpgsqlParameter { Value = _value };
        if (_value is Guid[])
            parameter.NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Uuid;
        return parameter;
    }
}
