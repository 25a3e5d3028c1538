package witnessmark.shell;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import jakarta.validation.executable.ExecutableValidator;
import jakarta.validation.metadata.BeanDescriptor;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.util.Set;

/** The validator that the framework asks before each command: no option carries a constraint, so it finds nothing. */
final class NothingToCheck implements Validator, ExecutableValidator {
    @Override
    public <T> Set<ConstraintViolation<T>> validate(T object, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateProperty(T object, String property, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateValue(
            Class<T> type, String property, Object value, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateParameters(
            T object, Method method, Object[] values, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateReturnValue(
            T object, Method method, Object value, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateConstructorParameters(
            Constructor<? extends T> constructor, Object[] values, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public <T> Set<ConstraintViolation<T>> validateConstructorReturnValue(
            Constructor<? extends T> constructor, T created, Class<?>... groups) {
        return Set.of();
    }

    @Override
    public ExecutableValidator forExecutables() {
        return this;
    }

    @Override
    public BeanDescriptor getConstraintsForClass(Class<?> type) {
        throw new UnsupportedOperationException("nothing is described here");
    }

    @Override
    public <T> T unwrap(Class<T> type) {
        return type.cast(this);
    }
}
