package witnessmark.shell;

import jakarta.validation.BootstrapConfiguration;
import jakarta.validation.ClockProvider;
import jakarta.validation.Configuration;
import jakarta.validation.ConstraintValidatorFactory;
import jakarta.validation.MessageInterpolator;
import jakarta.validation.ParameterNameProvider;
import jakarta.validation.TraversableResolver;
import jakarta.validation.Validator;
import jakarta.validation.ValidatorContext;
import jakarta.validation.ValidatorFactory;
import jakarta.validation.spi.BootstrapState;
import jakarta.validation.spi.ConfigurationState;
import jakarta.validation.spi.ValidationProvider;
import jakarta.validation.valueextraction.ValueExtractor;
import java.io.InputStream;

/**
 * The provider of validators that the framework demands before any command runs. No option carries a constraint, and one
 * that could check them would load some four hundred classes at each start.
 */
public final class NoConstraints implements ValidationProvider<NoConstraints.Settings> {

    @Override
    public Settings createSpecializedConfiguration(BootstrapState state) {
        return new Settings();
    }

    @Override
    public Configuration<?> createGenericConfiguration(BootstrapState state) {
        return new Settings();
    }

    @Override
    public ValidatorFactory buildValidatorFactory(ConfigurationState state) {
        return new Factory();
    }

    /** Takes every setting and needs none. */
    public static final class Settings implements Configuration<Settings> {
        @Override
        public Settings ignoreXmlConfiguration() {
            return this;
        }

        @Override
        public Settings messageInterpolator(MessageInterpolator any) {
            return this;
        }

        @Override
        public Settings traversableResolver(TraversableResolver any) {
            return this;
        }

        @Override
        public Settings constraintValidatorFactory(ConstraintValidatorFactory any) {
            return this;
        }

        @Override
        public Settings parameterNameProvider(ParameterNameProvider any) {
            return this;
        }

        @Override
        public Settings clockProvider(ClockProvider any) {
            return this;
        }

        @Override
        public Settings addValueExtractor(ValueExtractor<?> any) {
            return this;
        }

        @Override
        public Settings addMapping(InputStream any) {
            return this;
        }

        @Override
        public Settings addProperty(String name, String value) {
            return this;
        }

        @Override
        public MessageInterpolator getDefaultMessageInterpolator() {
            throw nothing();
        }

        @Override
        public TraversableResolver getDefaultTraversableResolver() {
            throw nothing();
        }

        @Override
        public ConstraintValidatorFactory getDefaultConstraintValidatorFactory() {
            throw nothing();
        }

        @Override
        public ParameterNameProvider getDefaultParameterNameProvider() {
            throw nothing();
        }

        @Override
        public ClockProvider getDefaultClockProvider() {
            throw nothing();
        }

        @Override
        public BootstrapConfiguration getBootstrapConfiguration() {
            throw nothing();
        }

        @Override
        public ValidatorFactory buildValidatorFactory() {
            return new Factory();
        }
    }

    private static final class Factory implements ValidatorFactory {
        @Override
        public Validator getValidator() {
            return new NothingToCheck();
        }

        @Override
        public ValidatorContext usingContext() {
            throw nothing();
        }

        @Override
        public MessageInterpolator getMessageInterpolator() {
            throw nothing();
        }

        @Override
        public TraversableResolver getTraversableResolver() {
            throw nothing();
        }

        @Override
        public ConstraintValidatorFactory getConstraintValidatorFactory() {
            throw nothing();
        }

        @Override
        public ParameterNameProvider getParameterNameProvider() {
            throw nothing();
        }

        @Override
        public ClockProvider getClockProvider() {
            throw nothing();
        }

        @Override
        public <T> T unwrap(Class<T> type) {
            return type.cast(this);
        }

        @Override
        public void close() {
            // holds nothing
        }
    }

    private static UnsupportedOperationException nothing() {
        return new UnsupportedOperationException("no option carries a constraint");
    }
}
