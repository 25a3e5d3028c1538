package witnessmark.shell;

import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.core.convert.ConversionService;
import org.springframework.shell.core.command.AbstractCommand;
import org.springframework.shell.core.command.CommandArgument;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.ExitStatus;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;

/**
 * A command as a method of its room declares it. The framework's own would word the whole line for a log that nobody reads
 * and look for validators, which together is a twentieth of a start.
 */
final class RoomCommand extends AbstractCommand {
    private final Method method;
    private final Supplier<?> room;
    private final ConversionService values;

    /**
     * @param room what declares the method; asked for when the command runs
     * @param values makes of the words what the method takes
     */
    RoomCommand(Method method, Command declared, Supplier<?> room, ConversionService values) {
        super(
                String.join(" ", declared.name()),
                declared.description(),
                declared.group(),
                declared.help(),
                declared.hidden());
        this.method = method;
        this.room = room;
        this.values = values;
        method.setAccessible(true);
        setOptions(Arrays.stream(method.getParameters())
                .filter(p -> p.isAnnotationPresent(Option.class))
                .map(p -> described(p.getAnnotation(Option.class), p.getType()))
                .toList());
    }

    private static CommandOption described(Option option, Class<?> type) {
        return CommandOption.with()
                .longName(option.longName())
                .description(option.description())
                .defaultValue(option.defaultValue())
                .type(type)
                .build();
    }

    /** How many words beside its options the command takes at most. */
    int mostWords() {
        List<Parameter> parameters = List.of(method.getParameters());
        return parameters.stream().anyMatch(p -> p.isAnnotationPresent(Arguments.class))
                ? Integer.MAX_VALUE
                : (int) parameters.stream()
                        .filter(p -> p.isAnnotationPresent(Argument.class))
                        .count();
    }

    @Override
    public ExitStatus doExecute(CommandContext context) throws ReflectiveOperationException {
        Parameter[] parameters = method.getParameters();
        Object[] given = new Object[parameters.length];
        for (int i = 0; i < given.length; i++) {
            given[i] = given(parameters[i], context);
        }
        method.invoke(room.get(), given);
        return ExitStatus.OK;
    }

    private @Nullable Object given(Parameter parameter, CommandContext context) {
        Option option = parameter.getAnnotation(Option.class);
        if (option != null) {
            CommandOption word = context.getOptionByLongName(option.longName());
            String leftOut = parameter.getType() == boolean.class ? "false" : option.defaultValue();
            return values.convert(word == null ? leftOut : word.value(), parameter.getType());
        }
        Argument argument = parameter.getAnnotation(Argument.class);
        if (argument != null) {
            CommandArgument word = context.getArgumentByIndex(argument.index());
            return values.convert(word == null ? argument.defaultValue() : word.value(), parameter.getType());
        }
        return parameter.isAnnotationPresent(Arguments.class)
                ? context.parsedInput().arguments().stream()
                        .map(CommandArgument::value)
                        .toList()
                : context;
    }
}
