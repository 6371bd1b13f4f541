package county.bigtree.registry.upkeep;

import java.nio.file.Path;

import county.bigtree.registry.database.OwnFolder;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Where archives are put. The demo is told anew at any time: it has none unless a folder
 * is named.
 */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties({ ArchiveSettings.class, UpkeepSettings.class })
class UpkeepConfiguration {

	@Bean
	ArchiveFolder archiveFolder(ArchiveSettings settings, ObjectProvider<OwnFolder> own,
			@Value("${registry.demo:false}") String demo) {
		Path named = settings.folder();
		if (named != null) {
			return new ArchiveFolder(named);
		}
		OwnFolder beside = own.getIfAvailable();
		return new ArchiveFolder((beside != null && "false".equals(demo)) ? beside.path().resolve("archives") : null);
	}

}
