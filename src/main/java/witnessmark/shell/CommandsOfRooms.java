package witnessmark.shell;

import java.lang.reflect.Method;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.core.convert.ConversionService;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.completion.CompletionProvider;
import org.springframework.shell.core.command.exit.ExitStatusExceptionMapper;

/**
 * The commands of all rooms by name; each is put together when it is first asked for, since one start mostly runs one.
 * The framework's own registry would scan the class path once more.
 */
final class CommandsOfRooms extends CommandRegistry {
    private final GenericApplicationContext context;
    private final Map<String, Method> declared = new LinkedHashMap<>();
    private final Map<String, RoomCommand> made = new LinkedHashMap<>();

    CommandsOfRooms(GenericApplicationContext context) {
        this.context = context;
        for (String bean : context.getBeanDefinitionNames()) {
            Class<?> type = context.getType(bean, false);
            for (Method method : type == null ? new Method[0] : type.getDeclaredMethods()) {
                Command command = method.getAnnotation(Command.class);
                if (command != null) {
                    declared.put(String.join(" ", command.name()), method);
                }
            }
        }
    }

    @Override
    public org.springframework.shell.core.command.@Nullable Command getCommandByName(String name) {
        Method method = declared.get(name);
        return method == null ? super.getCommandByName(name) : made.computeIfAbsent(name, n -> make(method));
    }

    @Override
    public Set<org.springframework.shell.core.command.Command> getCommands() {
        Set<org.springframework.shell.core.command.Command> all = new LinkedHashSet<>(super.getCommands());
        declared.keySet().forEach(name -> all.add(getCommandByName(name)));
        return all;
    }

    @Override
    public List<org.springframework.shell.core.command.Command> getCommandsByPrefix(String prefix) {
        return getCommands().stream()
                .filter(c -> c.getName().startsWith(prefix))
                .toList();
    }

    /** How many words beside its options a command takes at most. */
    int mostWords(org.springframework.shell.core.command.Command command) {
        return made.get(command.getName()).mostWords();
    }

    private RoomCommand make(Method method) {
        Command declared = method.getAnnotation(Command.class);
        RoomCommand command = new RoomCommand(
                method,
                declared,
                () -> context.getBean(method.getDeclaringClass()),
                context.getBean(ConversionService.class));
        command.setExitStatusExceptionMapper(
                context.getBean(declared.exitStatusExceptionMapper(), ExitStatusExceptionMapper.class));
        if (!declared.completionProvider().isEmpty()) {
            command.setCompletionProvider(context.getBean(declared.completionProvider(), CompletionProvider.class));
        }
        return command;
    }
}
