package witnessmark.shell;

import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.support.CommandFactoryBean;

/**
 * The commands of all rooms by name; each is put together when it is first asked for, since one start mostly runs one.
 * The framework's own registry would scan the class path once more.
 */
final class CommandsOfRooms extends CommandRegistry {
    private final GenericApplicationContext context;
    private final Map<String, Method> declared = new LinkedHashMap<>();
    private final Map<String, org.springframework.shell.core.command.Command> made = new LinkedHashMap<>();

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
        List<Parameter> parameters = List.of(declared.get(command.getName()).getParameters());
        return parameters.stream().anyMatch(p -> p.isAnnotationPresent(Arguments.class))
                ? Integer.MAX_VALUE
                : (int) parameters.stream()
                        .filter(p -> p.isAnnotationPresent(Argument.class))
                        .count();
    }

    private org.springframework.shell.core.command.Command make(Method method) {
        CommandFactoryBean command = new CommandFactoryBean(method);
        command.setApplicationContext(context);
        return command.getObject();
    }
}
